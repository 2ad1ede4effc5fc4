#include "strandline/promise.h"

#include "strandline/existing.h"
#include "strandline/levels.h"

namespace strandline {
namespace {

bool on_white(ProductClass cls) { return cls == ProductClass::direct || cls == ProductClass::corrector; }

// Lengths away from the warmth of the scalp.
constexpr double kFromCm = 5, kToCm = 15;

}  // namespace

double usual_ratio(ProductClass cls, const Constants& c) {
  if (cls == ProductClass::direct) return 0;
  if (cls == ProductClass::demi || cls == ProductClass::filler) return c.usual_ratio_demi;
  return cls == ProductClass::high_lift ? c.usual_ratio_high_lift : c.usual_ratio_permanent;
}

BowlChemistry usual_bowl(ProductClass cls, const Constants& c) {
  BowlChemistry bowl;
  bowl.cls = cls;
  const double ratio = usual_ratio(cls, c);
  double percent = c.usual_percent_permanent;
  bowl.minutes = c.lift_full_minutes;
  if (cls == ProductClass::direct) {
    percent = 0;
  } else if (cls == ProductClass::demi || cls == ProductClass::filler) {
    percent = c.usual_percent_demi, bowl.minutes = c.usual_minutes_demi, bowl.alkaline_lift = c.alkali_demi;
  } else if (cls == ProductClass::high_lift) {
    percent = c.usual_percent_high_lift, bowl.minutes = c.usual_minutes_high_lift,
    bowl.alkaline_lift = c.alkali_high_lift;
  }
  bowl.peroxide_percent = percent * ratio / (1 + ratio);
  bowl.reference_minutes = bowl.minutes;
  return bowl;
}

Spectrum load_for(const Fibre& hair, const Lab& wanted, const BowlChemistry& bowl, const Constants& c) {
  const Treatment t = treatment(bowl, kFromCm, kToCm, c);
  const double taken = uptake(hair, t, c);
  if (!(taken > 0)) return {};
  const Spectrum prefer = selectivity(hair, c);
  Fibre bare = lightened(hair, t, c);
  const Spectrum left = bare.dye;
  bare.dye = {};
  Spectrum load = dyed_to(bare, wanted, pigments(c)).dye;
  for (int b = 0; b < kBands; ++b) load[b] = prefer[b] > 0 ? std::max(0.0, load[b] - left[b]) / (taken * prefer[b]) : 0;
  return load;
}

double promised_level(ProductClass cls, double level, const Constants& c) {
  return level + (cls == ProductClass::demi || cls == ProductClass::filler ? c.promise_demi : c.promise_permanent);
}

Spectrum promised_load(ProductClass cls, double level, Tone tone, const Constants& c) {
  const BowlChemistry bowl = usual_bowl(cls, c);
  if (on_white(cls)) return load_for(white_fibre(), colour_of(level, tone), bowl, c);
  return load_for(natural_fibre(level, Tone::natural), colour_of(promised_level(cls, level, c), tone), bowl, c);
}

}  // namespace strandline
