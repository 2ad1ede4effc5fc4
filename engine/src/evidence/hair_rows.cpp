#include <algorithm>
#include <cmath>
#include <limits>

#include "evidence/rows.h"
#include "generated/tables.h"
#include "strandline/fibre.h"
#include "strandline/growth.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

// Nearest hair with one pheomelanin share for all and one amount of melanin per sample (ΔE*ab).
double nearest(const Lab& measured) {
  const Constants c;
  const Pigments p = pigments(c);
  double best = std::numeric_limits<double>::infinity();
  constexpr int kSteps = 2000;
  constexpr double kLeast = 0.005, kMost = 3.5;  // % w/w, the reported range and below
  for (int i = 0; i <= kSteps; ++i) {
    const double total = kLeast * std::pow(kMost / kLeast, static_cast<double>(i) / kSteps);
    Fibre f;
    f.eumelanin = total * (1 - c.pheomelanin_share);
    f.pheomelanin = total * c.pheomelanin_share;
    best = std::min(best, delta_e_ab(lab(reflectance(optical_depth(f, p)), daylight()), measured));
  }
  return best;
}

}  // namespace

void hair_rows(Rows& rows) {
  double sum = 0;
  const auto& samples = tables::natural_hair_sphere;
  for (size_t i = 0; i < samples.size(); ++i) {
    const double miss = nearest({samples[i][0], samples[i][1], samples[i][2]});
    sum += miss;
    rows.between("natural_hair.sphere." + std::to_string(i + 1), 0, 4, miss,
                 "J Soc Cosmet Chem 46(4) 1995; J Cosmet Sci 51:293 (2000)");
  }
  rows.between("natural_hair.sphere.mean", 0, 2, sum / static_cast<double>(samples.size()),
               "J Soc Cosmet Chem 46(4) 1995; J Cosmet Sci 51:293 (2000)");
  for (int level = 2; level <= 9; ++level) {
    const Fibre f = natural_fibre(level, Tone::natural);
    // The low end is reported to one digit, for light blond, which is level 8.
    rows.between("melanin.level" + std::to_string(level), 0.05, 3.5, f.eumelanin + f.pheomelanin,
                 "reported range of melanin in hair, 0.1 (light blond) to 3.5 % w/w (black)");
  }
  const double radius = 35e-6;
  for (const auto& [d, minutes, fraction] : tables::cylinder_uptake_curve)
    rows.add("cylinder_uptake.d" + std::to_string(static_cast<int>(std::lround(d * 1e16))) + "." +
                 std::to_string(static_cast<int>(minutes)) + "min",
             fraction, cylinder_uptake(d * minutes * 60 / (radius * radius)), 0.0055,
             "Crank, The Mathematics of Diffusion, eq. 5.23");
  for (const auto& [weeks, cm] : tables::regrowth_table) {
    const Reading grown = regrowth_cm(weeks);
    rows.add("growth." + std::to_string(static_cast<int>(weeks)) + "weeks", cm, grown.value, grown.sd,
             "common practice");
  }
}

}  // namespace strandline
