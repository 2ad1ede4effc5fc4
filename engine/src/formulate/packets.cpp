#include "formulate/packets.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "formulate/reasons.h"
#include "generated/constants.h"

namespace strandline {
namespace {

std::vector<ZoneRef> woven_among(const Head& head, const std::vector<std::string>& wanted) {
  std::vector<ZoneRef> all = zones(head);
  std::erase_if(all, [&](const ZoneRef& z) {
    return !z.area->woven || std::find(wanted.begin(), wanted.end(), z.id) == wanted.end();
  });
  return all;
}

}  // namespace

bool all_woven(const Head& head, const std::vector<std::string>& zones) {
  return woven_among(head, zones).size() == zones.size();
}

Reasons packets_of(const Head& head, const PlannedBowl& bowl, const Shelf& shelf, const FormulaPolicy& policy) {
  const std::vector<ZoneRef> woven = woven_among(head, bowl.bowl.zones);
  const Range* range = find_range(shelf, bowl.bowl.formula.range);
  if (woven.empty() || !range || consistency(*range) == Consistency::liquid) return {};
  std::set<const Area*> areas;
  std::vector<std::string> names;
  for (const ZoneRef& z : woven) areas.insert(z.area), names.push_back(z.id);
  double count = 0;
  for (const Area* a : areas) count += packets(head, *a);
  const double whole = mix_grams(head, bowl.bowl.zones, policy).cream;
  const double own = whole > 0 ? bowl.grams * mix_grams(head, names, policy).cream / whole : 0;
  return {{"in_packets", "", {{"packets", figure(count, 0)}, {"grams", figure(own / count)}}}};
}

}  // namespace strandline
