#include "strandline/fibre.h"

#include <algorithm>
#include <cmath>

#include "generated/tables.h"

namespace strandline {
namespace {

constexpr double kNapierPerDecade = 2.302585092994046;

// Extinction at one band, interpolated in its logarithm between the tabulated wavelengths.
double extinction(double nm, int column) {
  const auto& rows = tables::melanin_extinction;
  size_t i = 1;
  while (i + 1 < rows.size() && rows[i][0] < nm) ++i;
  const double w = (nm - rows[i - 1][0]) / (rows[i][0] - rows[i - 1][0]);
  return std::exp((1 - w) * std::log(rows[i - 1][column]) + w * std::log(rows[i][column]));
}

// Optical depth across one fibre of 1 % w/w melanin whose decadic extinction is `epsilon` cm⁻¹ per mg/ml.
double tau_per_percent(double epsilon, const Constants& c) {
  const double diameter_cm = c.fibre_diameter_um * 1e-4;
  return kNapierPerDecade * epsilon * c.melanin_mg_per_ml_per_percent * diameter_cm;
}

}  // namespace

double bed_warmth(int band, const Constants& c) {
  constexpr double kLeast = 0.1;  // whatever is drawn, a pigment goes on absorbing
  return std::max(kLeast, 1 + c.bed_warmth * (550 - band_nm(band)) / 150);
}

Pigments pigments(const Constants& c) {
  struct Extinctions {
    Spectrum eumelanin, pheomelanin;
  };
  static const Extinctions at = [] {
    Extinctions e;
    for (int b = 0; b < kBands; ++b)
      e.eumelanin[b] = extinction(band_nm(b), 1), e.pheomelanin[b] = extinction(band_nm(b), 2);
    return e;
  }();
  Pigments p;
  for (int b = 0; b < kBands; ++b) {
    const double nm = band_nm(b);
    const double warmth = bed_warmth(b, c);
    p.eumelanin[b] = tau_per_percent(at.eumelanin[b], c) * warmth;
    p.pheomelanin[b] = tau_per_percent(at.pheomelanin[b], c) * warmth;
    p.oxidised[b] = c.oxidised_tau_550 * std::exp(-(nm - 550) / c.oxidised_efold_nm);
    p.yellow[b] = c.keratin_yellow_tau_550 * std::exp(-(nm - 550) / c.keratin_yellow_efold_nm);
    p.keratin[b] = c.keratin_flat_tau + p.yellow[b];
  }
  return p;
}

Spectrum optical_depth(const Fibre& f, const Pigments& p) {
  Spectrum tau;
  for (int b = 0; b < kBands; ++b)
    tau[b] = p.keratin[b] - f.yellow_lost * p.yellow[b] + f.eumelanin * p.eumelanin[b] +
             f.pheomelanin * p.pheomelanin[b] + f.oxidised * p.oxidised[b] + f.dye[b];
  return tau;
}

// Long times by the series over the zeros of J0, short times by the expansion in √Fo; at Fo = 0.008 they meet within
// 2e-5.
double cylinder_uptake(double fo) {
  if (fo <= 0) return 0;
  if (fo < 0.008) {
    const double root = std::sqrt(fo);
    return std::min(1.0, 4 * root / std::sqrt(M_PI) - fo - fo * root / (3 * std::sqrt(M_PI)));
  }
  static constexpr std::array<double, 10> zeros = {
      2.404825557695773,  5.520078110286311,  8.653727912911013,  11.791534439014281, 14.930917708487785,
      18.071063967910924, 21.211636629879258, 24.352471530749302, 27.493479132040254, 30.634606468431975};
  double left = 0;
  for (double z : zeros) left += 4 / (z * z) * std::exp(-z * z * fo);
  return 1 - left;
}

double shown(const Fibre& f, const Treatment& t, const Constants& c) {
  double dye = 0;
  for (double d : f.dye) dye += d / kBands;
  const double melanin = f.eumelanin + f.pheomelanin + f.oxidised;
  const auto falls = [](double to, double with) { return to + (1 - to) * std::exp(-with); };
  return falls(std::min(1.0, t.shown_on_melanin), melanin / t.melanin_scale) *
         falls(std::min(1.0, c.shown_on_dye), dye / c.shown_dye_scale);
}

double uptake(const Fibre& f, const Treatment& t, const Constants& c) {
  const double damage = std::pow(c.porosity_diffusion_factor, f.porosity - 1);
  const double resistant = std::pow(c.resistant_diffusion_factor, f.resistance);
  const double reference = cylinder_uptake(t.fourier_reference);
  if (reference <= 0) return 0;
  return c.shade_strength * shown(f, t, c) * cylinder_uptake(t.fourier * damage * resistant) / reference;
}

Spectrum selectivity(const Fibre& f, const Constants& c) {
  Spectrum s;
  const double steps = std::max(0.0, f.porosity - 1);
  for (int b = 0; b < kBands; ++b) {
    // A colorant that absorbs at 590 nm and beyond looks blue to violet, one that absorbs at 430–500 nm gold to red.
    const double blue_side = std::tanh((band_nm(b) - 545) / 45);
    s[b] = std::max(0.0, 1 + c.selectivity_per_step * steps * blue_side);
  }
  return s;
}

Fibre lightened(const Fibre& f, const Treatment& t, const Constants& c) {
  Fibre after = f;
  const double h = t.exposure * std::pow(c.porosity_lift_factor, f.porosity - 1);
  const double keep_e = std::exp(-h), keep_o = std::exp(-c.oxidised_rate_ratio * h);
  const double formed = c.oxidised_yield * f.eumelanin * (keep_o - keep_e) / (1 - c.oxidised_rate_ratio);
  after.eumelanin = f.eumelanin * keep_e;
  after.pheomelanin = f.pheomelanin * std::exp(-c.pheomelanin_rate_ratio * h);
  after.oxidised = f.oxidised * keep_o + formed;
  after.yellow_lost = 1 - (1 - f.yellow_lost) * std::exp(-c.keratin_yellow_rate_ratio * h);
  const double dye_left = std::exp(-t.dye_exposure);
  for (double& d : after.dye) d *= dye_left;
  return after;
}

Fibre treated(const Fibre& f, const Treatment& t, const Spectrum& preference, const Constants& c) {
  Fibre after = lightened(f, t, c);
  const double u = uptake(f, t, c);
  for (int b = 0; b < kBands; ++b) after.dye[b] += u * preference[b] * t.load[b];
  after.porosity = std::min(3.0, f.porosity + t.wear);
  after.resistance = f.resistance * std::exp(-t.softening);
  return after;
}

}  // namespace strandline
