// One zone with its wish, ready for the search: what the scoreboards of the search share.
#pragma once

#include <vector>

#include "invented.h"
#include "measure.h"
#include "mix/habits.h"
#include "search/search.h"

namespace strandline::scoreboard {

inline constexpr MixGrams kMixGrams{60, 60};  // one bowl: its money counts, law and stock are kept

struct OneZone {
  OneZone(std::uint64_t seed, const Shelf& shelf, double doubt = 1)
      : wanted(invented_zone(seed)),
        targets(*aim(wanted.head, wanted.wishes, shelf)),
        draws(draw(wanted.head, kSearchScenarios, doubt)) {
    const std::vector<ZoneRef> refs = strandline::zones(wanted.head);
    SearchZone z;
    z.area = refs[0].area;
    z.span = refs[0].span;
    z.draws = &draws.zones[0];
    z.target = &targets[0];
    z.price = zone_loss(targets[0], FormulaPolicy{}.covered_contrast_levels);
    z.white = white_share(draws.zones[0]);
    z.asked = asked_lift(*z.span, targets[0]);
    z.needed_percent = needed_developer_percent(*z.span, z.asked);
    zones.push_back(z);
  }
  OneZone(const OneZone&) = delete;
  OneZone& operator=(const OneZone&) = delete;

  Wanted wanted;
  std::vector<Target> targets;
  Draws draws;
  std::vector<SearchZone> zones;
};

// What one search of one zone took and found.
struct Searched {
  double ms = 0;
  BowlList list;
  SearchCounts counts;
};

inline Searched search_one(const Domain& domain, const OneZone& zone, const FormulateOptions& options = {},
                           MixGrams grams = kMixGrams) {
  const FormulaPolicy policy;
  Searched s;
  s.ms = median_ms(1, [&] {
    BowlSearch search(domain, zone.zones, zone.draws, 1, policy, options);
    s.list = search.find({.zones = {0}, .grams = grams});
    s.counts = search.counts();
  });
  return s;
}

inline double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

}  // namespace strandline::scoreboard
