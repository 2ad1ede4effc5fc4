// A short run with another seed must agree with the committed files of knowledge/fibre.
#include <gtest/gtest.h>

#include "concave_fit.h"
#include "generated/constants.h"
#include "generated/tables.h"
#include "study.h"

namespace strandline::fibre_bed {
namespace {

const Effort kShort{.scale = 1, .threads = 1, .seed = 424242};

void expect_agree(const Value& fresh, double committed, double committed_error, double where) {
  const double error = std::hypot(fresh.error, committed_error);
  EXPECT_GT(error, 0) << where;
  EXPECT_NEAR(fresh.value, committed, 4 * error) << where;
}

TEST(Agreement, Curve) {
  const auto tau = curve_depths();
  const auto fresh = study_curve({}, 1.5e4, kShort);
  ASSERT_EQ(tables::reflectance_curve.size(), tau.size());
  for (size_t i = 1; i < tau.size(); ++i) {
    const auto& row = tables::reflectance_curve[i];
    EXPECT_NEAR(row[0], tau[i], 1e-4 * tau[i]);
    expect_agree(fresh[i], row[1], row[2], tau[i]);
    EXPECT_LT(fresh[i].error / fresh[i].value, 0.03) << tau[i];
  }
}

TEST(Agreement, ConcaveFormFollowsTheCurve) {
  ConcaveCurve f{stearns_noechel_offset(0.30), Constants{}.reflectance_e_inf, {}, {}};
  for (const auto& [kappa, alpha] : tables::reflectance_cubes) {
    EXPECT_GE(alpha, 0);
    f.kappa.push_back(kappa);
    f.alpha.push_back(alpha);
  }
  for (const auto& row : tables::reflectance_curve) {
    if (row[0] < 0.002 || row[0] > 10) continue;
    EXPECT_NEAR(f.reflectance(row[0]) / row[1], 1, 0.005) << row[0];
  }
}

TEST(Agreement, Blends) {
  const BlendStudy fresh = study_blend({}, 2e4, kShort);
  size_t row = 0;
  for (const BlendPair& p : fresh.pairs)
    for (size_t i = 0; i < p.blends.size(); ++i, ++row) {
      const auto& known = tables::blend_curves[row];
      ASSERT_NEAR(known[0], p.tau_white, 1e-9);
      ASSERT_NEAR(known[1], p.tau_pigmented, 1e-9);
      expect_agree({p.blends[i].mixed, p.errors[i]}, known[3], known[4], p.tau_pigmented);
    }
  ASSERT_EQ(row, tables::blend_curves.size());
}

TEST(Agreement, Geometry) {
  const Geometry fresh = study_geometry({}, 4e4, kShort);
  ASSERT_EQ(tables::geometry_curves.size(), fresh.tau.size());
  for (size_t i = 0; i < fresh.tau.size(); i += 4) {
    const auto& row = tables::geometry_curves[i];
    expect_agree(fresh.sphere[i], row[1], row[2], fresh.tau[i]);
    expect_agree(fresh.sphere_excluded[i], row[3], row[4], fresh.tau[i]);
    expect_agree(fresh.average[i], row[5], row[6], fresh.tau[i]);
  }
}

TEST(Agreement, CoarsePacketsMixByArea) {
  // Packets much wider than the way of light: R mixes nearly by area (M falls), single fibres far from it.
  BedSpec packets;
  packets.packet = 8;
  EXPECT_LT(study_blend(packets, 6e3, kShort).m.value, 0.5 * study_blend({}, 6e3, kShort).m.value);
}

}  // namespace
}  // namespace strandline::fibre_bed
