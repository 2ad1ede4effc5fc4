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

// Nearest hair with one amount of melanin per sample (ΔE*ab), seen through `seen`.
double nearest(const Lab& measured, double pheomelanin_share, Spectrum (*seen)(const Spectrum&)) {
  const Pigments p = pigments(Constants{});
  double best = std::numeric_limits<double>::infinity();
  constexpr int kSteps = 2000;
  constexpr double kLeast = 0.005, kMost = 3.5;  // % w/w, the reported range and below
  for (int i = 0; i <= kSteps; ++i) {
    const double total = kLeast * std::pow(kMost / kLeast, static_cast<double>(i) / kSteps);
    Fibre f;
    f.eumelanin = total * (1 - pheomelanin_share);
    f.pheomelanin = total * pheomelanin_share;
    best = std::min(best, delta_e_ab(lab(seen(optical_depth(f, p)), daylight()), measured));
  }
  return best;
}

Spectrum by_sphere(const Spectrum& tau) { return reflectance(tau); }

void sphere(Rows& rows) {
  constexpr const char* kSource = "J Soc Cosmet Chem 46(4) 1995; J Cosmet Sci 51:293 (2000)";
  double sum = 0;
  const auto& samples = tables::natural_hair_sphere;
  for (size_t i = 0; i < samples.size(); ++i) {
    const Lab measured{samples[i][0], samples[i][1], samples[i][2]};
    const double miss = nearest(measured, Constants{}.pheomelanin_share, by_sphere);
    sum += miss;
    rows.between("natural_hair.sphere." + std::to_string(i + 1), 0, 4, miss, kSource);
  }
  rows.between("natural_hair.sphere.mean", 0, 2, sum / static_cast<double>(samples.size()), kSource);
}

// R of the same bed lit at 45° and seen along the normal, averaged over the fibres' direction: log-log interpolation of
// the computed table.
double directional(double tau) {
  constexpr size_t kTau = 0, kAverage45 = 5;
  const auto& t = tables::geometry_curves;
  size_t i = 1;
  while (i + 1 < t.size() && t[i][kTau] < tau) ++i;
  const double x = std::log(std::clamp(tau, t.front()[kTau], t.back()[kTau]) / t[i - 1][kTau]);
  const double u = x / std::log(t[i][kTau] / t[i - 1][kTau]);
  return t[i - 1][kAverage45] * std::pow(t[i][kAverage45] / t[i - 1][kAverage45], u);
}

Spectrum by_45_0(const Spectrum& tau) {
  Spectrum r;
  for (int b = 0; b < kBands; ++b) r[b] = directional(tau[b]);
  return r;
}

double own_share(const Lab& measured) {
  double best = std::numeric_limits<double>::infinity();
  constexpr int kShares = 20;
  for (int k = 0; k <= kShares; ++k)
    best = std::min(best, nearest(measured, static_cast<double>(k) / kShares, by_45_0));
  return best;
}

double lightness(double grey) {
  Spectrum r;
  r.fill(grey);
  return lab(r, daylight()).l;
}

// Readings of another geometry, held to it by the computed bed and kept apart from the fit. Single heads, an unknown
// direction of the fibres and one observer unstated: looser than by sphere.
void directional_readings(Rows& rows) {
  constexpr const char* kSource = "Bohnert, Vogt, Weinmann 1998, table 1; Vrhel, Gershon, Iwan, Color Res Appl 1994";
  double sum = 0;
  const auto& samples = tables::natural_hair_directional;
  for (size_t i = 0; i < samples.size(); ++i) {
    const Lab measured{samples[i][1], samples[i][2], samples[i][3]};
    const double miss =
        samples[i][0] > 0 ? own_share(measured) : nearest(measured, Constants{}.pheomelanin_share, by_45_0);
    sum += miss;
    rows.between("natural_hair.directional." + std::to_string(i + 1), 0, 5, miss, kSource);
  }
  rows.between("natural_hair.directional.mean", 0, 3, sum / static_cast<double>(samples.size()), kSource);

  // The darkest hair is what the surfaces of the bed give back. Directional readings lie between 11.5 and 12.8; packing
  // and tilt move the computed floor by the sd that is stored with it.
  const Constants c;
  rows.between("black.sphere", 17, 18.4, lightness(c.bed_floor_sphere),
               "J Soc Cosmet Chem 46(4) 1995; J Cosmet Sci 51:293 (2000)");
  const double floor = lightness(c.bed_floor_average_45_0);
  for (const ConstantInfo& info : constant_infos)
    if (info.member == &Constants::bed_floor_average_45_0) {
      const double beds = floor - lightness(info.value - info.sd);
      rows.between("black.directional", 11.5 - beds, 12.8 + beds, floor, kSource);
    }
}

}  // namespace

void hair_rows(Rows& rows) {
  sphere(rows);
  directional_readings(rows);
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
