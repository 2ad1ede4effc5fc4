#include "rules/own_bowl.h"

#include <algorithm>

#include "strandline/treatment.h"

namespace strandline {
namespace {

// What a bowl has, in the words of the limits.
struct Has {
  std::string_view limit;
  double value = 0;
};

std::vector<Has> numbers_of(const Bowl& bowl, const Shelf& shelf) {
  double all = 0, developer = 0, peroxide = 0, colours = 0;
  for (const Part& part : bowl.formula.parts) {
    const Product* own = find_product(shelf, part.product);
    if (!own) continue;
    all += part.grams;
    peroxide += part.grams * own->peroxide_percent;
    if (own->cls == ProductClass::developer)
      developer += part.grams;
    else if (own->cls != ProductClass::corrector && part.grams > 0)
      colours += 1;
  }
  const double bottle = developer > 0 ? peroxide / developer : 0;
  return {{"developer_max", bottle},
          {"developer_below", bottle},
          {"on_head_max", all > 0 ? peroxide / all : 0},
          {"minutes_max", bowl.formula.minutes},
          {"shades_max", colours}};
}

// The porosity that the most porous fibres come to (M16): span.porosity is theirs.
double porosity_after(const Place& p) {
  const auto made = chemistry(p.bowl->formula, p.visit.shelf);
  if (!made || made->peroxide_percent <= 0) return 0;
  return p.span.porosity.value + treatment(*made, p.span.from_cm, p.span.to_cm, Constants{}).wear;
}

bool passes(const Has& has, double limit) {
  constexpr double kSlack = 0.05;  // what half grams do to a strength
  return has.limit == "developer_below" ? has.value >= limit - kSlack : has.value > limit + kSlack;
}

// A limit on what is counted in the bowl itself: its condition is the limit.
bool condition_is_limit(const Rule& r) { return r.topic == "bowl" && r.says == Says::ceiling; }

}  // namespace

std::vector<Verdict> passed(const Place& p, const std::string& zone) {
  std::vector<Verdict> all;
  std::vector<Has> numbers = numbers_of(*p.bowl, p.visit.shelf);
  numbers.push_back({"porosity_after_max", std::min(3.0, porosity_after(p))});
  for (const Rule& r : rules()) {
    if (r.of_wish && r.topic == "wish") continue;
    const auto because = speaks(r, p);
    if (because && (r.says == Says::stop || r.says == Says::ask || condition_is_limit(r))) {
      all.push_back(verdict_of(r, *because, p, zone));
      continue;
    }
    const bool shades = r.id == "mix.levels" && !because;
    if (!because && !shades) continue;
    for (const Has& has : numbers) {
      if (shades && has.limit != "shades_max") continue;
      if (passes(has, figure_of(r, has.limit, p.visit.policy.rules)))
        all.push_back(verdict_of(r, {has.limit, has.value}, p, zone));
    }
  }
  return all;
}

}  // namespace strandline
