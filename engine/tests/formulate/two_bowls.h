// A regrowth and its lengths, each with a bowl of its own, ready for what is decided between two bowls.
#pragma once

#include "engine/tests/support.h"
#include "formulate/choose.h"
#include "mix/situation.h"

namespace strandline::testing_support {

// Natural regrowth beside lengths that were tinted, or that grew so too.
inline Head two_spans(double gap_cm = 0, double lengths_level = 6, ColourOrigin lengths = ColourOrigin::natural) {
  Head h;
  Span grown = span("regrowth", 0, 2, 0.3, 6), other = span("lengths", 2 + gap_cm, 12, 0.1, lengths_level);
  for (Population& p : other.populations) p.origin = lengths;
  if (lengths == ColourOrigin::tinted) other.porosity.value = 1.8;
  h.areas.push_back(area("crown", AreaKind::crown, 250, {grown, other}));
  return h;
}

struct TwoBowls {
  Head head;
  Shelf shelf = small_shelf(7);
  FormulaPolicy policy;
  std::vector<Target> targets;
  Situation now;
  std::vector<SearchZone> zones;
  Domain all;
  FormulateOptions options;
  BowlSearch search;
  ChoiceInput in;

  // Without a level for the lengths they stay as they are.
  TwoBowls(Head h, double at_scalp, std::optional<double> below, const std::function<void(Shelf&)>& change = {})
      : head(std::move(h)),
        targets([&] {
          if (change) change(shelf);
          ZoneAim one, other;
          one.zone = "crown/regrowth", one.level = at_scalp;
          other.zone = "crown/lengths", other.level = below, other.leave = !below;
          return *aim(head, {one, other}, shelf);
        }()),
        now(at_start(head, kSearchScenarios)),
        zones(search_zones(now, targets, policy)),
        all(domain(shelf, policy)),
        search(all, zones, now.draws, 2, policy, options),
        in{head,
           shelf,
           policy,
           all,
           zones,
           now.draws,
           2,
           [&](int setting, int zone, double minutes) -> const ZoneTable& {
             return search.table(setting, zone, minutes);
           }} {
    in.plainest = [this](const Wish& wish, const BowlSearch::Judged& judge) { return search.plainest(wish, judge); };
  }

  Choice best() {
    Chooser chooser(in, group_zones(zones), [&](const Wish& wish) { return search.find(wish); });
    return chooser.choose(4);
  }
};

}  // namespace strandline::testing_support
