#include "strandline/card.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "generated/learning.h"
#include "measure/card_fit.h"

namespace strandline::card {
namespace {

constexpr int kFeatures = 7;
using Normal = Eigen::Matrix<double, kFeatures, kFeatures>;
using Features = Eigen::Matrix<double, kFeatures, 1>;

// What is regressed on: the channels and the roots of their products, which grow with the light as they do, and a
// little that does not: flare.
Features features(const Linear& v) {
  constexpr double kFlare = 0.02;
  const auto root = [](double p, double q) { return std::sqrt(std::max(0.0, p * q)); };
  Features f;
  f << v[0], v[1], v[2], root(v[0], v[1]), root(v[1], v[2]), root(v[0], v[2]), kFlare;
  return f;
}

// As it looks: by cube roots.
double apart_squared(const Linear& p, const Linear& q) {
  double sum = 0;
  for (size_t k = 0; k < 3; ++k) sum += std::pow(std::cbrt(p[k]) - std::cbrt(q[k]), 2);
  return sum;
}

}  // namespace

Lab mapped(const Even& even, std::span<const measured::Sample> references, const Linear& seen, size_t left_out) {
  constexpr double kLeast = 0.05;
  const learned::Priors p;
  const Xyz& d65 = weights(Light::daylight, Observer::cie_1964_10deg).white;
  Normal normal = Normal::Identity() * p.card_ridge;
  Eigen::Matrix<double, kFeatures, 3> right = Eigen::Matrix<double, kFeatures, 3>::Zero();
  for (size_t i = 0; i < even.patches.size(); ++i) {
    if (i == left_out || !even.usable[i]) continue;
    const Features f = features(even.patches[i]);
    const Xyz c = xyz(references[i].lab, d65);
    // Errors count as they look: relative to how light the patch is.
    const double weight = std::exp(-apart_squared(even.patches[i], seen) / (2 * p.card_near * p.card_near)) /
                          std::pow(std::max(0.01, c.y / 100), 4.0 / 3);
    normal += weight * f * f.transpose();
    right += weight * f * Eigen::RowVector3d(c.x, c.y, c.z) / 100;
  }
  const Eigen::RowVector3d got = 100 * features(seen).transpose() * normal.ldlt().solve(right);
  return lab(Xyz{std::max(kLeast, got[0]), std::max(kLeast, got[1]), std::max(kLeast, got[2])}, d65);
}

Result<Measured> measure(const Codes& seen, std::span<const measured::Sample> references) {
  if (references.size() != patches().size())
    return tl::unexpected(Problems{{"card_patches_missing", "", {{"ids", ""}, {"count", "0"}}}});
  return evened(seen).map([&](const Even& raw) {
    Measured out;
    const bool spectra =
        std::all_of(references.begin(), references.end(), [](const auto& s) { return s.reflectance.has_value(); });
    Even even = straightened(raw, luminances(references));
    double moved = 0;
    if (spectra) {
      constexpr int kTurns = 2;
      Channels channels = usual_channels();
      for (int turn = 0; turn < kTurns; ++turn) {
        std::vector<Linear> truly;
        for (const measured::Sample& s : references) truly.push_back(seen_by(channels, *s.reflectance));
        even = straightened(raw, truly);
        channels = channels_of(even, references);
      }
      const Lab inked = mapped(even, references, even.strand);
      out.lab = as_hair(even, references, channels, inked);
      moved = delta_e_2000(out.lab, inked);
    } else {
      out.lab = mapped(even, references, even.strand);
    }
    // Patches about as light as the strand, each foreseen from the others.
    constexpr double kAlike = 15, kNineInTen = 0.9;  // L*
    std::vector<double> off;
    out.to_nearest = 1e9;
    for (size_t i = 0; i < references.size(); ++i) {
      const double far = delta_e_2000(references[i].lab, out.lab);
      if (far < out.to_nearest) out.to_nearest = far, out.nearest = patches()[i].id;
      if (patches()[i].grey || !even.usable[i] || std::abs(references[i].lab.l - out.lab.l) > kAlike) continue;
      off.push_back(delta_e_2000(mapped(even, references, even.patches[i], i), references[i].lab));
    }
    std::sort(off.begin(), off.end());
    if (!off.empty())
      out.error = off[std::min(off.size() - 1, static_cast<size_t>(kNineInTen * static_cast<double>(off.size())))];
    const learned::Priors p;
    out.error = p.card_stated * std::hypot(out.error, spectra ? p.card_hair_doubt * moved : p.card_ink_unknown);
    return out;
  });
}

Result<Neighbours> compare(const Codes& seen) {
  return evened(seen).map([&](const Even& even) {
    std::vector<size_t> order(even.patches.size());
    for (size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::sort(order.begin(), order.end(), [&](size_t p, size_t q) {
      return apart_squared(even.patches[p], even.strand) < apart_squared(even.patches[q], even.strand);
    });
    return Neighbours{patches()[order[0]].id, patches()[order[1]].id, even.strand[1] > even.patches[order[0]][1]};
  });
}

}  // namespace strandline::card
