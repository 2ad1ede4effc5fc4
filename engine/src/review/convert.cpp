#include "mix/settings.h"
#include "review/remake.h"
#include "strandline/pipeline.h"

namespace strandline {

Result<std::vector<Remade>> convert(const Visit& visit, const std::string& range, const FormulateOptions& options) {
  if (visit.bowls.empty()) return tl::unexpected(Problems{{"no_bowls", "/bowls", {}}});
  const Range* to = find_range(visit.shelf, range);
  if (!to) return tl::unexpected(Problems{{"unknown_range", "", {{"range", range}}}});
  if (!formulated(to->cls)) return tl::unexpected(Problems{{"range_gives_no_colour", "", {{"range", to->name}}}});
  const Shelf only = part_of(visit.shelf, [&](const Product& p) { return p.range == range; });
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  const auto found = found_by(visit, bowls, options.scenarios);
  if (!found) return tl::unexpected(found.error());
  std::vector<Remade> all;
  for (size_t b = 0; b < bowls.size(); ++b) {
    const Bowl& bowl = bowls[b];
    const Found& own = (*found)[b];
    const auto wish = as_it_makes(visit, own);
    if (!wish) return tl::unexpected(wish.error());
    Remade r;
    r.label = bowl.label;
    auto best = best_bowl(visit.head, own.now, *wish, bowl.zones, only, visit.policy.formula, options, bowl.label);
    if (!best) {
      r.notes.push_back({"nothing_may_replace", "", {{"bowl", bowl.label}}});
    } else {
      *best = in_grams_of(bowl, std::move(*best), visit.shelf, visit.policy.formula);
      auto moved = differences(visit, own, best->bowl.formula);
      if (!moved) return tl::unexpected(moved.error());
      r.zones = std::move(*moved);
      if (maker_of(bowl.formula, visit.shelf) != to->maker)
        r.notes.push_back({"other_maker_skin_test", "", {{"bowl", bowl.label}}});
      r.bowl = std::move(*best);
      r.bowl.bowl.step = bowl.step;
    }
    all.push_back(std::move(r));
  }
  return all;
}

}  // namespace strandline
