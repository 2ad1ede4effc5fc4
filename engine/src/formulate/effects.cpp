#include "formulate/effects.h"

#include <algorithm>

#include "strandline/levels.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

struct Outcome {
  double level = 0, warm = 0, red = 0, loss = 0;
};

// Without one part, the other colour parts weighed up to the same grams.
Formula without(const Formula& f, size_t part, const Shelf& shelf) {
  double colour = 0;
  auto is_colour = [&](const Part& p) {
    const Product* product = find_product(shelf, p.product);
    return product && product->cls != ProductClass::developer;
  };
  for (const Part& p : f.parts)
    if (is_colour(p)) colour += p.grams;
  Formula rest = f;
  for (Part& p : rest.parts)
    if (is_colour(p)) p.grams *= colour / (colour - f.parts[part].grams);
  rest.parts.erase(rest.parts.begin() + static_cast<long>(part));
  return rest;
}

}  // namespace

std::vector<PartEffect> part_effects(const Formula& f, const std::vector<const SearchZone*>& zones,
                                     const std::vector<double>& longer, const Draws& draws, const Shelf& shelf) {
  std::vector<PartEffect> all;
  const auto whole = chemistry(f, shelf);
  if (!whole || zones.empty()) return all;
  Draws one = draws;
  one.constants = {draws.nominal};
  std::vector<ZoneTable> tables, nominal;
  double weight = 0;
  for (size_t i = 0; i < zones.size(); ++i) {
    BowlChemistry here = *whole;
    here.minutes = std::max(0.0, f.minutes + longer[i]);
    tables.push_back(zone_table(*zones[i]->draws, here, draws));
    ZoneDraws alone = *zones[i]->draws;
    alone.scenarios = {alone.nominal};
    nominal.push_back(zone_table(alone, here, one));
    weight += zones[i]->weight;
  }
  auto outcome = [&](const Spectrum& load) {
    Outcome o;
    const std::vector<float> single(load.begin(), load.end());
    for (size_t i = 0; i < zones.size(); ++i) {
      const double share = zones[i]->weight / weight;
      const Lab c = colours(nominal[i], single.data()).front().lab;
      const ZoneLoss& price = zones[i]->price;
      float loss = 0;
      mean_losses(tables[i], price, single.data(), 1, &loss);
      o.level += share * level_of_lightness(c.l);
      o.warm += share * (c.a * price.axis.a + c.b * price.axis.b);
      o.red += share * (c.a * price.axis.b - c.b * price.axis.a);
      o.loss += share * static_cast<double>(loss);
    }
    return o;
  };
  const Outcome with = outcome(whole->load);
  for (size_t i = 0; i < f.parts.size(); ++i) {
    const Product* p = find_product(shelf, f.parts[i].product);
    if (!p || p->cls == ProductClass::developer || !(f.parts[i].grams > 0)) continue;
    const auto rest = chemistry(without(f, i, shelf), shelf);
    const bool only_one = std::count_if(f.parts.begin(), f.parts.end(), [&](const Part& part) {
                            const Product* other = find_product(shelf, part.product);
                            return other && other->cls != ProductClass::developer && part.grams > 0;
                          }) < 2;
    if (only_one || !rest) continue;
    const Outcome now = outcome(rest->load);
    all.push_back({p->id, now.level - with.level, now.warm - with.warm, now.red - with.red, now.loss - with.loss});
  }
  return all;
}

}  // namespace strandline
