#include "evidence/truth_bed.h"

#include <algorithm>
#include <cmath>

#include "generated/tables.h"

namespace strandline::truth {
namespace {

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

// Straight lines between the digitised points.
double extinction(double nm, size_t column) {
  const auto& rows = tables::melanin_extinction;
  for (size_t i = 1; i < rows.size(); ++i)
    if (nm <= rows[i][0])
      return rows[i - 1][column] +
             (rows[i][column] - rows[i - 1][column]) * (nm - rows[i - 1][0]) / (rows[i][0] - rows[i - 1][0]);
  return rows.back()[column];
}

Absorbers absorbers(double flat, double yellow, double efold, double diameter_um, double oxidised,
                    double oxidised_efold) {
  constexpr double kNapier = 2.302585, kUmPerCm = 1e4, kMgPerMl = 13.2;
  Absorbers a;
  for (int b = 0; b < kBands; ++b) {
    const double nm = band_nm(b), path = kNapier * kMgPerMl * diameter_um / kUmPerCm;
    a.keratin[b] = flat + yellow * std::exp((550 - nm) / efold);
    a.eumelanin[b] = path * extinction(nm, 1);
    a.pheomelanin[b] = path * extinction(nm, 2);
    a.intermediate[b] = oxidised * std::exp((550 - nm) / oxidised_efold);
  }
  return a;
}

// Columns of reflectance_curve.
constexpr size_t kTau = 0, kPacking50 = 1, kPacking35 = 4, kPacking54 = 5;

}  // namespace

Belief belief(double Constants::* member) {
  for (const ConstantInfo& info : constant_infos)
    if (info.member == member) return {info.value, info.sd, info.log_spread};
  return {};
}

Spectrum Hair::depth() const {
  Spectrum d;
  for (int b = 0; b < kBands; ++b)
    d[b] = absorbers->keratin[b] + eumelanin * absorbers->eumelanin[b] + pheomelanin * absorbers->pheomelanin[b] +
           intermediate * absorbers->intermediate[b] + dye[b];
  return d;
}

double Bed::reflectance(double depth) const {
  const auto& rows = tables::reflectance_curve;
  // Row 0 is no absorption at all; from row 1 on the logarithms are joined by straight lines.
  auto at = [&](size_t row) {
    const bool loose = packing_ < 0.5;
    const double w = loose ? (0.5 - packing_) / 0.15 : (packing_ - 0.5) / 0.04;
    return (1 - w) * rows[row][kPacking50] + w * rows[row][loose ? kPacking35 : kPacking54];
  };
  size_t i = 2;
  while (i + 1 < rows.size() && depth > rows[i][kTau]) ++i;
  const double x = std::log(std::clamp(depth, rows[1][kTau] / 4, rows.back()[kTau]));
  const double x0 = std::log(rows[i - 1][kTau]), x1 = std::log(rows[i][kTau]);
  const double y0 = std::log(at(i - 1)), y1 = std::log(at(i));
  return std::min(1.0, std::exp(y0 + (y1 - y0) * (x - x0) / (x1 - x0)));
}

Spectrum Bed::reflectance(const Spectrum& depth) const {
  Spectrum r;
  for (int b = 0; b < kBands; ++b) r[b] = reflectance(depth[b]);
  return r;
}

Lab Bed::colour(const Spectrum& depth) const { return lab(reflectance(depth), daylight()); }

Lab Bed::blend(const Spectrum& one, const Spectrum& other, double share, double m) const {
  const Spectrum p = reflectance(one), q = reflectance(other);
  Spectrum r;
  for (int b = 0; b < kBands; ++b) {
    auto f = [m](double x) { return (1 - x) / (m * (x - 0.01) + 0.01); };
    const double v = (1 - share) * f(p[b]) + share * f(q[b]);
    r[b] = (1 - 0.01 * v * (1 - m)) / (1 + m * v);
  }
  return lab(r, daylight());
}

Nature::Nature(Random& random) {
  const double diameter = std::clamp(belief(&Constants::fibre_diameter_um).draw(random), 45.0, 95.0);
  const double oxidised = belief(&Constants::oxidised_tau_550).value;
  const double efold = belief(&Constants::oxidised_efold_nm).draw(random);
  const double yellow_efold = belief(&Constants::keratin_yellow_efold_nm).draw(random);
  own_ = absorbers(belief(&Constants::keratin_flat_tau).draw(random),
                   belief(&Constants::keratin_yellow_tau_550).draw(random), yellow_efold, diameter,
                   oxidised * diameter / belief(&Constants::fibre_diameter_um).value, efold);
  typical_ = absorbers(belief(&Constants::keratin_flat_tau).value, belief(&Constants::keratin_yellow_tau_550).value,
                       belief(&Constants::keratin_yellow_efold_nm).value, diameter, oxidised, efold);
  pheomelanin_share_ = std::clamp(belief(&Constants::pheomelanin_share).draw(random), 0.0, 0.5);
  blend_m_ = belief(&Constants::blend_m).draw(random);
}

Hair Nature::white() const {
  Hair h;
  h.absorbers = &own_;
  return h;
}

Hair Nature::typical_white() const {
  Hair h;
  h.absorbers = &typical_;
  return h;
}

Hair Nature::hair(const Bed& bed, double lightness) const {
  double low = 0, high = 15;
  Hair h = white();
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    h.eumelanin = middle * (1 - pheomelanin_share_), h.pheomelanin = middle * pheomelanin_share_;
    (bed.colour(h.depth()).l > lightness ? low : high) = middle;
  }
  return h;
}

}  // namespace strandline::truth
