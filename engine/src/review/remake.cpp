#include "review/remake.h"

#include <algorithm>

#include "formulate/from.h"
#include "review/looks.h"

namespace strandline {

Shelf part_of(Shelf shelf, const Usable& usable) {
  std::erase_if(shelf.products, [&](const Product& p) { return p.cls != ProductClass::developer && !usable(p); });
  return shelf;
}

std::optional<PlannedBowl> best_bowl(const Head& head, const Situation& now, const std::vector<Target>& targets,
                                     const std::vector<std::string>& zones, const Shelf& shelf,
                                     const FormulaPolicy& policy, const FormulateOptions& options,
                                     const std::string& label) {
  std::vector<Target> own;
  for (const Target& t : targets)
    if (std::find(zones.begin(), zones.end(), t.zone) != zones.end()) own.push_back(t);
  FormulaPolicy one_bowl = policy;
  one_bowl.bowls_max = 1;
  auto plan = formulate_from({now, head, label.empty() ? 'A' : label[0], false}, own, shelf, one_bowl, options);
  if (!plan || plan->bowls.empty()) return std::nullopt;
  return std::move(plan->bowls.front());
}

Result<std::vector<ZoneDifference>> differences(const Visit& visit, const Bowl& bowl, const Formula& instead) {
  const auto before = nominal_looks(visit.head, {{bowl.formula, bowl.zones}}, visit.shelf);
  if (!before) return tl::unexpected(before.error());
  const auto after = nominal_looks(visit.head, {{instead, bowl.zones}}, visit.shelf);
  if (!after) return tl::unexpected(after.error());
  std::vector<ZoneDifference> all;
  for (size_t i = 0; i < before->size(); ++i) {
    const auto& [zone, looks] = (*before)[i];
    if (std::find(bowl.zones.begin(), bowl.zones.end(), zone) == bowl.zones.end()) continue;
    all.push_back({zone, looks, (*after)[i].second, delta_e_2000(looks.lab, (*after)[i].second.lab)});
  }
  return all;
}

Result<std::vector<Target>> as_it_makes(const Visit& visit, const Bowl& bowl) {
  const auto looks = nominal_looks(visit.head, {{bowl.formula, bowl.zones}}, visit.shelf);
  if (!looks) return tl::unexpected(looks.error());
  std::vector<Target> wishes;
  if (!visit.aims.empty()) {
    auto own = aim(visit.head, visit.aims, visit.shelf);
    if (!own) return own;
    wishes = std::move(*own);
  }
  std::vector<Target> all;
  for (const auto& [zone, made] : *looks) {
    if (std::find(bowl.zones.begin(), bowl.zones.end(), zone) == bowl.zones.end()) continue;
    Target t;
    t.zone = zone;
    t.lab = made.lab;
    t.level = made.named.level;
    t.tone = made.named.tone;
    for (const Target& w : wishes)
      if (w.zone == zone) t.weight = w.weight;
    all.push_back(std::move(t));
  }
  return all;
}

std::string maker_of(const Formula& formula, const Shelf& shelf) {
  const Range* range = find_range(shelf, formula.range);
  return range ? range->maker : "";
}

}  // namespace strandline
