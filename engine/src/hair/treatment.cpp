#include "strandline/treatment.h"

#include <algorithm>
#include <cmath>

#include "strandline/optics.h"

namespace strandline {
namespace {

Spectrum scaled(Spectrum s, double factor) {
  for (double& v : s) v *= factor;
  return s;
}

double diffusivity(ProductClass cls, const Constants& c) {
  if (cls == ProductClass::demi || cls == ProductClass::filler) return c.diffusivity_demi;
  return cls == ProductClass::direct ? c.diffusivity_direct : c.diffusivity_permanent;
}

// What is worked out through swollen, alkaline hair shows more than what is laid on, and is covered sooner by little
// melanin (M18).
void show_on_melanin(ProductClass cls, const Constants& c, Treatment& t) {
  const bool worked_out = cls == ProductClass::permanent || cls == ProductClass::high_lift;
  t.shown_on_melanin = worked_out ? c.shown_permanent : c.shown_demi;
  t.melanin_scale = worked_out ? c.shown_melanin_scale : c.shown_demi_scale;
}

// A remover has its own full time.
double dye_exposure(const BowlChemistry& bowl, double exposure, const Constants& c) {
  if (bowl.cls == ProductClass::remover) {
    const bool timed = bowl.minutes > 0 && bowl.reference_minutes > 0;
    return timed ? c.remover_exposure * std::pow(bowl.minutes / bowl.reference_minutes, c.lift_time_exponent) : 0;
  }
  return exposure * (bowl.cls == ProductClass::lightener ? c.lightener_on_tint : c.tint_on_tint_lift);
}

// A lightener is spent as it works; the bath of a tint keeps its peroxide for hours.
double working(const BowlChemistry& bowl, const Constants& c) {
  if (bowl.cls != ProductClass::lightener) return bowl.minutes;
  return -c.lightener_tires_minutes * std::expm1(-bowl.minutes / c.lightener_tires_minutes);
}

// Warmth of the scalp: highest at the skin, falling in a straight line to none at the reach; its mean over the span.
double scalp_heat(double from_cm, double to_cm, const Constants& c) {
  constexpr double kShortest = 1e-6;
  const double reach = std::max(c.scalp_heat_reach_cm, kShortest), to = std::max(to_cm, from_cm + kShortest);
  auto warmth_up_to = [reach](double x) { return std::min(x, reach) * (1 - std::min(x, reach) / (2 * reach)); };
  return 1 + (c.scalp_heat_factor - 1) * (warmth_up_to(to) - warmth_up_to(from_cm)) / (to - from_cm);
}

}  // namespace

double capacity_left(double total) {
  constexpr double kCapacity = Constants{}.capacity_tau;
  return 1 / (1 + total / kCapacity);
}

Spectrum thinned(const Spectrum& load, double share) {
  const double capacity = Constants{}.capacity_tau, total = std::min(mean(load), 0.95 * capacity);
  return saturated(scaled(load, share / (1 - total / capacity)));
}

Spectrum saturated(const Spectrum& offer) { return scaled(offer, capacity_left(mean(offer))); }

double dilution(const Range& range, double ratio) { return (1 + reference(range).ratio) / (1 + ratio); }

Result<BowlChemistry> chemistry(const Formula& formula, const Shelf& shelf) {
  const Range* range = find_range(shelf, formula.range);
  if (!range) return tl::unexpected(Problems{{"unknown_range", "/range", {{"range", formula.range}}}});
  Problems problems;
  double total_g = 0, peroxide = 0;
  Spectrum offer{};
  std::vector<NamedLoad> by_name;
  for (size_t i = 0; i < formula.parts.size(); ++i) {
    const Part& part = formula.parts[i];
    const std::string path = "/parts/" + std::to_string(i);
    const Product* product = find_product(shelf, part.product);
    if (!product) {
      problems.push_back({"unknown_product", path + "/product", {{"product", part.product}}});
      continue;
    }
    if (!(part.grams >= 0) || !std::isfinite(part.grams)) {
      problems.push_back({"grams_out_of_range", path + "/grams", {{"grams", std::to_string(part.grams)}}});
      continue;
    }
    const Range* own = find_range(shelf, product->range);
    if (own && own->maker != range->maker)
      problems.push_back({"two_makers_in_one_bowl", path + "/product", {{"product", product->name}}});
    total_g += part.grams;
    peroxide += part.grams * product->peroxide_percent;
    if (product->cls == ProductClass::developer) continue;
    if (!own) continue;
    const Spectrum o = offered(*product, *own);
    for (int b = 0; b < kBands; ++b) offer[b] += part.grams * o[b];
    if (known_by(*product) == KnownBy::name && mean(o) > 0) by_name.push_back({product->id, scaled(o, part.grams)});
  }
  if (problems.empty() && total_g <= 0) problems.push_back({"empty_bowl", "/parts", {}});
  if (!problems.empty()) return tl::unexpected(problems);

  BowlChemistry bowl;
  bowl.cls = range->cls;
  bowl.peroxide_percent = peroxide / total_g;
  bowl.minutes = formula.minutes;
  bowl.alkaline_lift = alkaline_lift(*range);
  bowl.reference_minutes = reference(*range).minutes;
  bowl.damp_hair = formula.damp_hair;
  // Per gram of the whole mix, against the colour part of the reference mix.
  const double per_colour_g = (1 + reference(*range).ratio) / total_g;
  offer = scaled(offer, per_colour_g);
  bowl.load = saturated(offer);
  for (NamedLoad& part : by_name) part.load = scaled(part.load, per_colour_g * capacity_left(mean(offer)));
  bowl.by_name = std::move(by_name);
  return bowl;
}

Treatment treatment(const BowlChemistry& bowl, double from_cm, double to_cm, const Constants& c) {
  Treatment t;
  const double radius_m = c.fibre_diameter_um / 2 * 1e-6;
  const double time = bowl.minutes > 0 ? std::pow(working(bowl, c) / c.lift_full_minutes, c.lift_time_exponent) : 0;
  const double water = bowl.damp_hair ? c.damp_dilution : 1;
  const double strength = std::pow(bowl.peroxide_percent * water / c.lift_reference_bowl_percent, c.lift_order);
  // No peroxide, no exposure: that alone makes a direct dye, an acid clear and a remover leave the pigment as it is.
  t.exposure = c.head_lift * c.lift_exposure_full * strength * time * bowl.alkaline_lift *
               scalp_heat(from_cm, to_cm, c) * (bowl.cls == ProductClass::lightener ? c.lightener_factor : 1);
  t.dye_exposure = dye_exposure(bowl, t.exposure, c);
  t.load = scaled(bowl.load, water);
  const double d = diffusivity(bowl.cls, c), seconds = 60;
  t.fourier = d * bowl.minutes * seconds / (radius_m * radius_m);
  t.fourier_reference = d * bowl.reference_minutes * seconds / (radius_m * radius_m);
  show_on_melanin(bowl.cls, c, t);
  t.wear = c.wear_per_exposure * t.exposure;
  t.softening = c.softening_per_exposure * t.exposure;
  return t;
}

}  // namespace strandline
