#include "evidence/truth_chemistry.h"

#include <algorithm>
#include <cmath>

namespace strandline::truth {
namespace {

// How much heads differ in what this code draws for them; the engine knows none of these numbers.
constexpr double kHeadRateSpread = 0.18;  // of the logarithm
constexpr double kDyeSpread = 0.10;       // of the logarithm
constexpr double kDemiAlkali = 0.15;      // of a tint's lift
constexpr int kSteps = 200;

// Mean of a warmth that falls exponentially from the skin, over the span.
double mean_heat(double at_skin, double fall_cm, double from, double to) {
  return 1 + (at_skin - 1) * fall_cm * (std::exp(-from / fall_cm) - std::exp(-to / fall_cm)) / (to - from);
}

}  // namespace

Chemistry::Chemistry(Random& random, const Known& bowl) : bowl_(bowl) {
  rate_ = belief(&Constants::lift_exposure_full).draw(random) * random.lognormal(1, kHeadRateSpread);
  if (bowl.kind == Kind::lightener) rate_ *= belief(&Constants::lightener_factor).draw(random);
  if (bowl.kind == Kind::demi) rate_ *= kDemiAlkali;
  order_ = belief(&Constants::lift_order).draw(random);
  time_exponent_ = random.uniform(0.5, 1);
  half_life_min_ = random.uniform(130, 480);
  heat_ = mean_heat(random.uniform(1.25, 1.55), random.uniform(0.7, 1.3), bowl.from_cm, bowl.to_cm);
  yield_ = std::clamp(belief(&Constants::oxidised_yield).draw(random), 0.0, 1.0);
  intermediate_ratio_ = std::clamp(belief(&Constants::oxidised_rate_ratio).draw(random), 0.02, 0.95);
  pheomelanin_ratio_ = std::max(0.02, belief(&Constants::pheomelanin_rate_ratio).draw(random));
  dye_strength_ = random.lognormal(1, kDyeSpread);
  dye_exponent_ = random.uniform(0.2, 0.5);
  dye_per_porosity_ = random.normal(0.4, 0.12);
  dye_tilt_ = random.normal(0.12, 0.04);
  lift_per_porosity_ = random.normal(0.12, 0.05);
}

double Chemistry::exposure(double porosity) const {
  const double full = Constants{}.lift_full_minutes;
  const double bowl_percent = bowl_.bottle_percent * bowl_.ratio / (1 + bowl_.ratio);
  double sum = 0;
  for (int i = 0; i < kSteps; ++i) {
    const double t0 = bowl_.minutes * i / kSteps, t1 = bowl_.minutes * (i + 1) / kSteps;
    const double percent = bowl_percent * std::exp2(-(t0 + t1) / 2 / half_life_min_);
    sum += std::pow(percent / 3, order_) * (std::pow(t1 / full, time_exponent_) - std::pow(t0 / full, time_exponent_));
  }
  return rate_ * heat_ * sum * (1 + lift_per_porosity_ * (porosity - 1));
}

void Chemistry::treat(Hair& hair, const Spectrum& dye, double porosity) const {
  // Midpoint steps of the three rates.
  const double h = exposure(porosity) / kSteps;
  for (int i = 0; i < kSteps; ++i) {
    const double e = hair.eumelanin * (1 - h / 2), o = hair.intermediate * (1 - intermediate_ratio_ * h / 2);
    hair.eumelanin -= h * e;
    hair.intermediate += h * (yield_ * e - intermediate_ratio_ * o);
    hair.pheomelanin *= 1 - pheomelanin_ratio_ * h;
  }
  const double reference = bowl_.kind == Kind::demi ? 20 : 35;
  const double taken = dye_strength_ * std::pow(bowl_.minutes / reference, dye_exponent_) *
                       std::max(0.2, 1 + dye_per_porosity_ * (porosity - 1));
  for (int b = 0; b < kBands; ++b) {
    const double tilt = 1 + dye_tilt_ * std::max(0.0, porosity - 1) * (band_nm(b) - 550) / 100;
    hair.dye[b] += taken * tilt * dye[b];
  }
}

}  // namespace strandline::truth
