#include "hair.h"

#include <algorithm>
#include <cmath>

#include "strandline/optics.h"

namespace strandline::calibrate {
namespace {

const Weights& daylight() {
  static const Weights& w = weights(Light::daylight, Observer::cie_1964_10deg);
  return w;
}

// Lengths away from the warmth of the scalp.
constexpr double kFromCm = 5, kToCm = 15;

}  // namespace

Hair::Hair(const Constants& constants, const std::array<double, kLevels>& amounts)
    : c_(constants), pigments_(pigments(constants)), amounts_(amounts) {
  for (int n = 0; n < kLevels; ++n) lightness_[n] = colour(melanin(amounts_[n])).l;
}

Lab Hair::colour(const Fibre& f) const { return lab(reflectance(optical_depth(f, pigments_)), daylight()); }

Fibre Hair::melanin(double percent) const {
  Fibre f;
  f.eumelanin = percent * (1 - c_.pheomelanin_share);
  f.pheomelanin = percent * c_.pheomelanin_share;
  return f;
}

Fibre Hair::natural(double level) const {
  const int below = std::clamp(static_cast<int>(std::floor(level)), 1, kLevels - 1);
  const double w = level - below;
  return melanin(std::exp((1 - w) * std::log(amounts_[below - 1]) + w * std::log(amounts_[below])));
}

double Hair::level(double l) const {
  int i = 1;
  while (i + 1 < kLevels && l > lightness_[i]) ++i;
  return i + (l - lightness_[i - 1]) / (lightness_[i] - lightness_[i - 1]);
}

Fibre Hair::tinted(const Fibre& f, double shade, double percent) const {
  const Spectrum wanted = optical_depth(natural(shade), pigments_);
  BowlChemistry bowl;
  bowl.peroxide_percent = percent / 2;
  bowl.minutes = bowl.reference_minutes = c_.lift_full_minutes;
  for (int b = 0; b < kBands; ++b) bowl.load[b] = wanted[b] - pigments_.keratin[b];
  return treated(f, treatment(bowl, kFromCm, kToCm, c_), selectivity(f, c_), c_);
}

Fibre Hair::after_lightener(const Fibre& f, double percent, double ratio, double minutes) const {
  BowlChemistry bowl;
  bowl.cls = ProductClass::lightener;
  bowl.peroxide_percent = percent * ratio / (1 + ratio);
  bowl.minutes = minutes;
  return lightened(f, treatment(bowl, kFromCm, kToCm, c_), c_);
}

Fibre Hair::exposed(const Fibre& f, double exposure) const { return lightened(f, Treatment{.exposure = exposure}, c_); }

Fibre Hair::lightened_to(double start, double target) const {
  const Fibre f = natural(start);
  const double wanted = colour(natural(target)).l;
  double low = 0, high = 20;
  for (int i = 0; i < 45; ++i) {
    const double middle = (low + high) / 2;
    (colour(exposed(f, middle)).l < wanted ? low : high) = middle;
  }
  return exposed(f, high);
}

}  // namespace strandline::calibrate
