#include "hair.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "strandline/existing.h"
#include "strandline/optics.h"
#include "strandline/promise.h"

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
  const double w = level - below;  // a step beyond the ends goes on as the last one
  return melanin(std::exp((1 - w) * std::log(amounts_[below - 1]) + w * std::log(amounts_[below])));
}

double Hair::level(double l) const {
  int i = 1;
  while (i + 1 < kLevels && l > lightness_[i]) ++i;
  return i + (l - lightness_[i - 1]) / (lightness_[i] - lightness_[i - 1]);
}

Fibre Hair::of(Kind kind, double level, double porosity) const {
  constexpr double kGrewAt = 6;
  Fibre f;
  if (kind == Kind::natural) f = natural(level);
  if (kind == Kind::tinted) {
    const auto [at, fresh] = tinted_.try_emplace(level);
    if (fresh) at->second = tinted_to(natural(level), colour(natural(level)), c_);
    f = at->second;
  }
  if (kind == Kind::lightened) f = lifted_to(natural(kGrewAt), colour(natural(level)).l, c_);
  f.porosity = porosity;
  return f;
}

const Spectrum& Hair::promised(ProductClass cls, double shade) const {
  const auto [at, fresh] = loads_.try_emplace({cls, shade});
  if (fresh)
    at->second = load_for(natural(shade), colour(natural(promised_level(cls, shade, c_))), usual_bowl(cls, c_), c_);
  return at->second;
}

Fibre Hair::after(const Fibre& f, const Bowl& b) const {
  BowlChemistry bowl = usual_bowl(b.cls, c_);
  bowl.peroxide_percent = b.percent * b.ratio / (1 + b.ratio);
  bowl.minutes = b.minutes;
  if (b.shade > 0) {
    // Offers add before the capacity of the fibre, so it is undone, thinned and put back.
    const Spectrum& full = promised(b.cls, b.shade);
    const double total = std::accumulate(full.begin(), full.end(), 0.0) / kBands;
    const double thinned = (1 - b.clear_share) * (1 + usual_process(b.cls, c_).ratio) / (1 + b.ratio);
    const double offered = thinned / (1 - std::min(total, 0.95 * c_.capacity_tau) / c_.capacity_tau);
    for (int i = 0; i < kBands; ++i) bowl.load[i] = full[i] * offered / (1 + offered * total / c_.capacity_tau);
  }
  return treated(f, treatment(bowl, kFromCm, kToCm, c_), selectivity(f, c_), c_);
}

Fibre Hair::tinted(const Fibre& f, double shade, double percent) const {
  return after(f, {.shade = shade, .percent = percent, .minutes = c_.lift_full_minutes});
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
