#include "strandline/promise.h"

#include <array>

#include "generated/tables.h"
#include "strandline/existing.h"
#include "strandline/levels.h"

namespace strandline {
namespace {

bool on_white(ProductClass cls) { return cls == ProductClass::direct || cls == ProductClass::corrector; }

// Lengths away from the warmth of the scalp.
constexpr double kFromCm = 5, kToCm = 15;

}  // namespace

ReferenceProcess usual_process(ProductClass cls, const Constants& c) {
  switch (cls) {
    case ProductClass::direct:
      return {0, 0, c.lift_full_minutes};
    case ProductClass::demi:
    case ProductClass::filler:
      return {c.usual_percent_demi, c.usual_ratio_demi, c.usual_minutes_demi};
    case ProductClass::remover:
      return {0, c.usual_ratio_permanent, c.usual_minutes_remover};
    case ProductClass::high_lift:
      return {c.usual_percent_high_lift, c.usual_ratio_high_lift, c.usual_minutes_high_lift};
    default:
      return {c.usual_percent_permanent, c.usual_ratio_permanent, c.lift_full_minutes};
  }
}

double usual_alkali(ProductClass cls, const Constants& c) {
  if (cls == ProductClass::demi || cls == ProductClass::filler) return c.alkali_demi;
  return cls == ProductClass::high_lift ? c.alkali_high_lift : 1;
}

BowlChemistry bare_bowl(ProductClass cls, const ReferenceProcess& process) {
  BowlChemistry bowl;
  bowl.cls = cls;
  bowl.peroxide_percent = process.developer_percent * process.ratio / (1 + process.ratio);
  bowl.minutes = bowl.reference_minutes = process.minutes;
  return bowl;
}

BowlChemistry usual_bowl(ProductClass cls, const Constants& c) {
  BowlChemistry bowl = bare_bowl(cls, usual_process(cls, c));
  bowl.alkaline_lift = usual_alkali(cls, c);
  return bowl;
}

ShownLoad shown_load(const Fibre& hair, const BowlChemistry& bowl, const Constants& c) {
  const Treatment t = treatment(bowl, kFromCm, kToCm, c);
  const double taken = uptake(hair, t, c);
  ShownLoad on{lightened(hair, t, c), selectivity(hair, c)};
  for (double& s : on.shows) s *= taken;
  return on;
}

Spectrum load_for(const Fibre& hair, const Lab& wanted, const BowlChemistry& bowl, const Constants& c) {
  ShownLoad on = shown_load(hair, bowl, c);
  const Spectrum left = on.bare.dye;
  on.bare.dye = {};
  Spectrum load = dyed_to(on.bare, wanted, pigments(c)).dye;
  for (int b = 0; b < kBands; ++b) load[b] = on.shows[b] > 0 ? std::max(0.0, load[b] - left[b]) / on.shows[b] : 0;
  return load;
}

double promised_level(ProductClass cls, double level, const Constants& c) {
  return level + (cls == ProductClass::demi || cls == ProductClass::filler ? c.promise_demi : c.promise_permanent);
}

bool names_colour(ProductClass cls, double level, Tone tone) {
  if (level > 0) return true;
  const auto& [yellow, red, blue] = tables::hue_words[static_cast<size_t>(tone)];
  return on_white(cls) && yellow + red + blue > 0;
}

Spectrum promised_load(const BowlChemistry& usual, double level, Tone tone, const Constants& c) {
  return load_for(natural_fibre(level, Tone::natural), colour_of(promised_level(usual.cls, level, c), tone), usual, c);
}

Spectrum promised_load(ProductClass cls, double level, Tone tone, const Constants& c) {
  if (!on_white(cls)) return promised_load(usual_bowl(cls, c), level, tone, c);
  if (level > 0) return load_for(white_fibre(), colour_of(level, tone), usual_bowl(cls, c), c);
  std::array<double, 3> hue = tables::hue_words[static_cast<size_t>(tone)];
  if (cls == ProductClass::direct)
    for (double& depth : hue) depth *= tables::direct_strength[0][0];
  return plain_absorbers(hue);
}

}  // namespace strandline
