#include <algorithm>
#include <cmath>
#include <limits>

#include "evidence/rows.h"
#include "generated/tables.h"
#include "strandline/fibre.h"
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
  // The first and the last were read where a later note quotes them.
  const Basis read = fitted("J Cosmet Sci 51:293 (2000), tables III, IV, VIII");
  const Basis quoted = second_hand(fitted("J Soc Cosmet Chem 46(4) 1995"));
  double sum = 0;
  const auto& samples = tables::natural_hair_sphere;
  for (size_t i = 0; i < samples.size(); ++i) {
    const Lab measured{samples[i][0], samples[i][1], samples[i][2]};
    const double miss = nearest(measured, Constants{}.pheomelanin_share, by_sphere);
    sum += miss;
    const bool ends = i == 0 || i + 1 == samples.size();
    rows.within("natural_hair.sphere." + std::to_string(i + 1), 0, 4, miss, ends ? quoted : read);
  }
  rows.within("natural_hair.sphere.mean", 0, 2, sum / static_cast<double>(samples.size()), second_hand(read));
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
  const Basis quoted = second_hand(outside("Bohnert, Vogt, Weinmann 1998, table 1"));
  const Basis spectra = outside("spectra of Vrhel, Gershon, Iwan, Color Res Appl 1994");
  constexpr size_t kQuoted = 4;  // the first rows of the table
  double sum = 0;
  const auto& samples = tables::natural_hair_directional;
  for (size_t i = 0; i < samples.size(); ++i) {
    const Lab measured{samples[i][1], samples[i][2], samples[i][3]};
    const double miss =
        samples[i][0] > 0 ? own_share(measured) : nearest(measured, Constants{}.pheomelanin_share, by_45_0);
    sum += miss;
    rows.within("natural_hair.directional." + std::to_string(i + 1), 0, 5, miss, i < kQuoted ? quoted : spectra);
  }
  rows.within("natural_hair.directional.mean", 0, 3, sum / static_cast<double>(samples.size()), second_hand(spectra));
}

// The darkest hair is what the surfaces of the bed give back. One sample a side: as far as two readings of one tress
// lie apart (1.2 L*, J Cosmet Sci 51:293, table III) the range reaches beyond them.
void black(Rows& rows) {
  constexpr double kRepeat = 1.2;
  rows.within("black.sphere", 17.3 - kRepeat, 18.37 + kRepeat, lightness(Constants{}.bed_floor_sphere),
              second_hand(outside("J Soc Cosmet Chem 46(4) 1995; J Cosmet Sci 51:293 (2000)")));
  rows.within("black.directional", 11.5 - kRepeat, 12.82 + kRepeat, lightness(Constants{}.bed_floor_average_45_0),
              second_hand(outside("Bohnert, Vogt, Weinmann 1998; Vrhel, Gershon, Iwan 1994")));
}

double melanin_of(double level) {
  const Fibre f = natural_fibre(level, Tone::natural);
  return f.eumelanin + f.pheomelanin;
}

void melanin(Rows& rows) {
  // Both are told to one digit.
  rows.within("melanin.black", 2.5, 3.5, melanin_of(1),
              fitted("granules about 3 % by weight in black hair (PMC5374528)"));
  rows.within("melanin.light_blond", 0.05, 0.15, melanin_of(8),
              second_hand(fitted("a page for pupils of the trade: 0.1 % in light blond")));
}

}  // namespace

void hair_rows(Rows& rows) {
  sphere(rows);
  directional_readings(rows);
  black(rows);
  melanin(rows);
  const double radius = 35e-6;
  for (const auto& [d, minutes, fraction] : tables::cylinder_uptake_curve)
    rows.about("cylinder_uptake.d" + std::to_string(static_cast<int>(std::lround(d * 1e16))) + "." +
                   std::to_string(static_cast<int>(minutes)) + "min",
               fraction, 0.0055, cylinder_uptake(d * minutes * 60 / (radius * radius)),
               law_or_identity("Crank, The Mathematics of Diffusion, eq. 5.23"));
  rows.within("growth.cm_a_month", 0.8, 1.3, Constants{}.growth_mm_per_month / 10,
              outside("2 100 people in 21 regions (Practical Modern Hair Science, p. 197)"));
}

}  // namespace strandline
