#include "evidence/truth_chemistry.h"

#include <algorithm>
#include <cmath>

namespace strandline::truth {
namespace {

constexpr int kHalvings = 20, kSteps = 30;
constexpr double kFullMinutes = 35, kDemiMinutes = 20, kRemoverMinutes = 20;

double mean(const Spectrum& s) {
  double sum = 0;
  for (double v : s) sum += v;
  return sum / kBands;
}

double share_in_bowl(const Bowl& b) { return b.bottle_percent * b.ratio / (1 + b.ratio); }

}  // namespace

// Levels gained and lost are what colourists agree on, spread over heads by half of what they allow each other.
Chemistry::Chemistry(Random& random, const Light& light, const Ladder& ladder) : light_(light), ladder_(ladder) {
  yield_ = std::clamp(random.normal(0.3, 0.07), 0.1, 0.6);
  intermediate_ratio_ = std::clamp(random.normal(0.33, 0.06), 0.1, 0.7);
  pheomelanin_ratio_ = std::clamp(random.normal(0.4, 0.1), 0.1, 0.9);
  // b* of white hair from 20 to 8 (Richena, thesis, Unicamp) by anything from 20 min of 6 % to an hour of 12 %.
  yellow_ratio_ = random.uniform(0.2, 0.8);
  order_ = random.normal(0.85, 0.1);
  lag_min_ = random.uniform(1, 4), tires_min_ = random.uniform(15, 35);
  at_skin_ = random.uniform(1.2, 1.5), fall_cm_ = random.uniform(0.7, 1.3);
  demi_alkali_ = random.lognormal(0.15, 0.2);
  lightener_on_dye_ = random.lognormal(0.45, 0.2), remover_ = random.lognormal(2.1, 0.25);
  same_level_tint_ = random.normal(0, 0.2), same_level_demi_ = random.normal(-0.45, 0.2);
  taken_on_dye_ = random.uniform(0.2, 0.5);
  dye_minutes_ = random.uniform(8, 20), dye_per_porosity_ = random.normal(0.55, 0.12);
  dye_tilt_ = random.normal(0.12, 0.04), lift_per_porosity_ = random.normal(0.12, 0.04);
  resists_ = random.normal(0.55, 0.1), wear_ = random.lognormal(0.3, 0.2), strength_ = random.lognormal(1, 0.08);
  const double tint_levels = random.normal(1.7, 0.3), lightener_levels = random.normal(3.7, 0.35);
  tint_rate_ = solved_rate(BowlClass::permanent, 6, 1, kFullMinutes, tint_levels);
  lightener_rate_ = solved_rate(BowlClass::lightener, 6, 2, 40, lightener_levels);
}

// A start that takes some minutes, then slower and slower; 1 at the full time. A course read by eye: 55, 73 and 82 % of
// the whole at 20, 30 and 50 min.
double Chemistry::time(double minutes) const {
  auto done = [&](double m) { return m <= lag_min_ ? 0 : 1 - std::exp(-(m - lag_min_) / tires_min_); };
  return done(minutes) / done(kFullMinutes);
}

double Chemistry::exposure(const Bowl& bowl) const {
  if (bowl.cls == BowlClass::remover) return 0;
  const double rate = bowl.cls == BowlClass::lightener ? lightener_rate_
                      : bowl.cls == BowlClass::demi    ? tint_rate_ * demi_alkali_
                                                       : tint_rate_;
  return rate * std::pow(share_in_bowl(bowl) / 3, order_) * time(bowl.minutes);
}

// The rate that lifts natural hair of level 5 by so many levels.
double Chemistry::solved_rate(BowlClass cls, double bottle_percent, double ratio, double minutes, double levels) {
  Bowl bare;
  bare.cls = cls, bare.bottle_percent = bottle_percent, bare.ratio = ratio, bare.minutes = minutes;
  double& rate = cls == BowlClass::lightener ? lightener_rate_ : tint_rate_;
  const double wanted = ladder_.lightness(5 + levels);
  double low = 0, high = 12;
  for (int i = 0; i < kHalvings; ++i) {
    rate = (low + high) / 2;
    Hair hair = light_.natural(ladder_.lightness(5));
    lighten(hair, exposure(bare), 0);
    (light_.colour(hair).l < wanted ? low : high) = rate;
  }
  return (low + high) / 2;
}

double Chemistry::warmth(double from_cm, double to_cm) const {
  return 1 +
         (at_skin_ - 1) * fall_cm_ * (std::exp(-from_cm / fall_cm_) - std::exp(-to_cm / fall_cm_)) / (to_cm - from_cm);
}

// Midpoint steps of the three rates.
void Chemistry::lighten(Hair& hair, double exposure, double on_dye) const {
  const double h = exposure / kSteps;
  for (int i = 0; i < kSteps; ++i) {
    const double e = hair.eumelanin * (1 - h / 2), o = hair.intermediate * (1 - intermediate_ratio_ * h / 2);
    hair.eumelanin = std::max(0.0, hair.eumelanin - h * e);
    hair.intermediate = std::max(0.0, hair.intermediate + h * (yield_ * e - intermediate_ratio_ * o));
    hair.pheomelanin *= std::max(0.0, 1 - pheomelanin_ratio_ * h);
  }
  hair.yellow *= std::exp(-yellow_ratio_ * exposure);
  for (double& d : hair.dye) d *= std::exp(-on_dye);
}

// The share that shows on pigmented hair is such that the shade on natural hair of its own level leaves that level (a
// demi about half a level less), with the usual bowl and time.
Dose Chemistry::dose(const Bowl& bowl, const Spectrum& load, double level) const {
  Dose d{bowl, load};
  const bool demi = bowl.cls == BowlClass::demi;
  if (!demi && bowl.cls != BowlClass::permanent) return d;
  Bowl usual = bowl;
  usual.bottle_percent = demi ? 1.5 : 6, usual.ratio = demi ? 2 : 1, usual.minutes = demi ? kDemiMinutes : kFullMinutes;
  Hair lifted = light_.natural(ladder_.lightness(level));
  d.own_eumelanin = lifted.eumelanin;
  lighten(lifted, exposure(usual), 0);
  const double wanted = ladder_.lightness(level + (demi ? same_level_demi_ : same_level_tint_));
  double low = 0, high = 1;
  for (int i = 0; i < kHalvings; ++i) {
    d.own_share = (low + high) / 2;
    Hair h = lifted;
    for (int b = 0; b < kBands; ++b) h.dye[b] = d.own_share * load[b];
    (light_.colour(h).l > wanted ? low : high) = d.own_share;
  }
  return d;
}

void Chemistry::treat(Hair& hair, Condition& condition, const Dose& dose, double warmth, const Shift& shift) const {
  const Bowl& bowl = dose.bowl;
  const double x =
      shift.rate * exposure(bowl) * warmth * std::max(0.3, 1 + lift_per_porosity_ * (condition.porosity - 1));
  // Of hair with half the pigment the share lies half way to all; dye that is there takes places.
  double share = 1 - (1 - dose.own_share) * std::min(1.0, hair.eumelanin / dose.own_eumelanin);
  const double there = mean(hair.dye), comes = mean(dose.load);
  if (there > 0 && comes > 0) share *= 1 - (1 - taken_on_dye_) * std::min(1.0, there / comes);
  const double on_dye = bowl.cls == BowlClass::remover
                            ? remover_ * shift.rate * time(bowl.minutes) / time(kRemoverMinutes)
                        : bowl.cls == BowlClass::lightener ? lightener_on_dye_ * x
                                                           : 0.02 * x;
  lighten(hair, x, on_dye);
  const double reference = bowl.cls == BowlClass::demi ? kDemiMinutes : kFullMinutes;
  const double came = (1 - std::exp(-bowl.minutes / dye_minutes_)) / (1 - std::exp(-reference / dye_minutes_));
  const double over = condition.porosity - 1;
  const double taken = shift.dye * strength_ * share * came * std::max(0.2, 1 + dye_per_porosity_ * over) *
                       (1 - resists_ * condition.resistance);
  for (int b = 0; b < kBands; ++b)
    hair.dye[b] += taken * (1 + dye_tilt_ * std::max(0.0, over) * (band_nm(b) - 550) / 100) * dose.load[b];
  condition.porosity += wear_ * x;
  condition.resistance *= std::exp(-0.9 * x);
}

}  // namespace strandline::truth
