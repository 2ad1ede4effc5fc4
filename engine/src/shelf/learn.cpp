// What each shade offers, by what it is known (M8).
#include <algorithm>

#include "strandline/existing.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/promise.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

// Undone from the fibre's capacity, so that offers add.
Spectrum unsaturated(Spectrum load) {
  const double capacity = Constants{}.capacity_tau, total = std::min(mean(load), 0.95 * capacity);
  for (double& v : load) v /= 1 - total / capacity;
  return load;
}

Spectrum beyond_white(const Spectrum& swatch) {
  static const Spectrum white = optical_depth(Fibre{}, pigments(Constants{}));
  Spectrum dye = optical_depth(swatch);
  for (int b = 0; b < kBands; ++b) dye[b] = std::max(0.0, dye[b] - white[b]);
  return unsaturated(dye);
}

BowlChemistry bowl_of(const Range& range, const ReferenceProcess& process) {
  BowlChemistry bowl = bare_bowl(range.cls, process);
  bowl.reference_minutes = reference(range).minutes;
  bowl.alkaline_lift = alkaline_lift(range);
  return bowl;
}

Spectrum beyond_hair(const Spectrum& swatch, const SwatchHair& hair, const Range& range) {
  const Constants c;
  Population p;
  p.tone = hair.tone, p.origin = hair.origin;
  Fibre fibre = fibre_as_read(p, hair.level, hair.natural_level.value_or(hair.level));
  fibre.porosity = hair.porosity;
  const ReferenceProcess process = hair.process.value_or(reference(range));
  const ShownLoad on = shown_load(fibre, bowl_of(range, process), c);
  const Spectrum bare = optical_depth(on.bare, pigments(c));
  Spectrum load = optical_depth(swatch);
  for (int b = 0; b < kBands; ++b) load[b] = on.shows[b] > 0 ? std::max(0.0, load[b] - bare[b]) / on.shows[b] : 0;
  load = unsaturated(load);
  for (double& v : load) v /= dilution(range, process.ratio);
  return load;
}

// A name is kept by the range's own reference process: what its class says of the usual developer and full time.
Spectrum by_name(const Product& p, const Range& range) {
  if (p.cls == ProductClass::clear || !names_colour(p.cls, p.level, p.tone)) return {};
  const double level = std::min(p.level, level_highest);
  if (p.cls == ProductClass::corrector || p.cls == ProductClass::direct)
    return promised_load(p.cls, level, p.tone, Constants{});
  return promised_load(bowl_of(range, reference(range)), level, p.tone, Constants{});
}

}  // namespace

Spectrum offered(const Product& p, const Range& range) {
  if (p.offer) return *p.offer;
  if (!has_colour(p)) return {};
  if (!p.swatch) return unsaturated(by_name(p, range));
  return p.swatch_on ? beyond_hair(*p.swatch, *p.swatch_on, range) : beyond_white(*p.swatch);
}

void learn(Shelf& shelf) {
  for (Product& p : shelf.products)
    if (const Range* range = find_range(shelf, p.range)) p.offer = offered(p, *range);
}

}  // namespace strandline
