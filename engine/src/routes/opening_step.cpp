#include "routes/opening_step.h"

#include <algorithm>
#include <set>

#include "formulate/from.h"
#include "formulate/packets.h"
#include "formulate/planned.h"
#include "formulate/reasons.h"
#include "mix/on_hair.h"
#include "mix/pour.h"
#include "routes/best_way.h"

namespace strandline {
namespace {

PlannedBowl first_bowl(const RouteTask& task, const Tried& way, Opening opening, const std::vector<std::string>& zones,
                       char label) {
  PlannedBowl b;
  b.bowl = {std::string(1, label), way.formula, zones};
  b.on = on_alike(task.head, b.bowl, way.formula.minutes);
  b.recipe = {way.step.range->id, {}, way.step.developer_percent, way.step.ratio, way.step.minutes};
  const int each = kEighths / static_cast<int>(way.step.products.size());
  for (const Product* p : way.step.products) b.recipe.shares.push_back({p->id, each});
  b.grams = grams(way.formula);
  b.cost = cost(way.formula, task.shelf);
  if (const auto real = chemistry(way.formula, task.shelf)) b.on_head_peroxide_percent = real->peroxide_percent;
  if (auto limits = law::check_limits(composition(way.formula, task.shelf), use_of(way.step.range->cls)))
    b.limits = *limits;
  // "Up to", from the first touch, where looking decides; else from the last.
  const double minutes = opening == Opening::lighten ? way.step.range->minutes.max : way.step.minutes;
  b.why.push_back({"route_" + std::string(code(opening)),
                   "",
                   {{"percent", figure(way.step.developer_percent)}, {"minutes", figure(minutes, 0)}}});
  for (Problem& reason : packets_of(task.head, b, task.shelf, task.policy)) b.why.push_back(std::move(reason));
  return b;
}

}  // namespace

std::optional<RouteStep> opening_step(const RouteTask& task, Situation& now, const Openings& openings, char& label) {
  RouteStep step;
  std::set<Opening> done;
  for (Opening opening : kOpenings)
    for (const bool scalp : {true, false})
      for (const bool woven : {false, true}) {
        const std::vector<SearchZone> all = search_zones(now, task.targets, task.policy);
        std::vector<const SearchZone*> zones;
        for (const SearchZone& z : all)
          if (const auto own = openings.find(z.draws->id);
              own != openings.end() && own->second == opening && touches_scalp(*z.span) == scalp &&
              z.area->woven.has_value() == woven && has_a_place(opening, z))
            zones.push_back(&z);
        if (zones.empty()) continue;
        const Shelf left = left_after(task.shelf, step.bowls);
        const auto way =
            best_way({task.head, task.targets, left, task.policy, task.options, task.domain}, now, opening, zones);
        if (!way) continue;
        step.bowls.push_back(first_bowl(task, *way, opening, ids(zones), label++));
        done.insert(opening);
      }
  if (step.bowls.empty()) return std::nullopt;
  step.kind = done.size() == 1 ? code(*done.begin()) : kSeveral;
  step.check_after =
      done.contains(Opening::lighten) || done.contains(Opening::remove) || done.contains(Opening::chelate);
  for (const PlannedBowl& b : step.bowls)
    if (auto then = after(now, step_of(b), task.shelf)) now = std::move(*then);
  if (task.options.rules) now.head = task.options.rules(std::move(now.head));
  return step;
}

void move_beside_packets(const Head& head, RouteStep& first, RouteStep& last) {
  const auto touched = [&](const std::string& zone) {
    return std::any_of(first.bowls.begin(), first.bowls.end(),
                       [&](const PlannedBowl& b) { return among(b.bowl.zones, zone); });
  };
  for (const PlannedBowl& b : first.bowls)
    if (!all_woven(head, b.bowl.zones)) return;
  const auto stays = std::stable_partition(last.bowls.begin(), last.bowls.end(), [&](const PlannedBowl& b) {
    return std::any_of(b.bowl.zones.begin(), b.bowl.zones.end(), touched);
  });
  std::vector<PlannedBowl> beside(std::make_move_iterator(stays), std::make_move_iterator(last.bowls.end()));
  last.bowls.erase(stays, last.bowls.end());
  for (PlannedBowl& b : beside) {
    b.bowl.step = 1;
    b.why.push_back({std::string(kBesidePackets), "", {}});
    first.bowls.push_back(std::move(b));
  }
}

}  // namespace strandline
