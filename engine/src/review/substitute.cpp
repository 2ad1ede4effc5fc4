#include <algorithm>

#include "formulate/own.h"
#include "formulate/reasons.h"
#include "mix/pour.h"
#include "review/remake.h"
#include "strandline/pipeline.h"

namespace strandline {
namespace {

bool holds(const Formula& f, const std::string& product) {
  return std::any_of(f.parts.begin(), f.parts.end(), [&](const Part& p) { return p.product == product; });
}

// Changes of one part that leave the product out, judged against the wishes; the best.
std::optional<Edit> without_it(Judge& judge, const Own& mine, const std::string& product, const Shelf& shelf,
                               const FormulaPolicy& policy) {
  std::optional<Edit> best;
  for (Edit& e : judge.edits({mine, {}})) {
    if (holds(pour(e.own, 100, shelf, policy), product)) continue;
    e.objective = judge.objective(e.own);
    if (!best || e.objective < best->objective) best = std::move(e);
  }
  return best;
}

// The bowl as far as it is weighed, finished with one shade of its range; the best of those that law and stock allow.
struct Finished {
  Formula formula;
  Problem change;
  double objective = 0;
};
std::optional<Finished> finished(Judge& judge, const Bowl& bowl, const EmptyTube& tube, const Shelf& shelf) {
  std::optional<Finished> best;
  for (const Product& p : shelf.products) {
    if (p.id == tube.product || p.range != bowl.formula.range || !has_colour(p) || p.cls == ProductClass::filler)
      continue;
    Finished f{bowl.formula, {}, 0};
    double missing = 0;
    for (Part& part : f.formula.parts)
      if (part.product == tube.product) missing += part.grams - tube.weighed_g, part.grams = tube.weighed_g;
    const auto there = std::find_if(f.formula.parts.begin(), f.formula.parts.end(),
                                    [&](const Part& part) { return part.product == p.id; });
    if (there != f.formula.parts.end())
      there->grams += missing;
    else
      f.formula.parts.insert(std::find_if(f.formula.parts.begin(), f.formula.parts.end(),
                                          [&](const Part& part) {
                                            const Product* own = find_product(shelf, part.product);
                                            return own && own->cls == ProductClass::developer;
                                          }),
                             {p.id, missing});
    // What is in the bowl came off the shelf already.
    Shelf left = shelf;
    for (Product& own : left.products)
      if (own.id == tube.product) own.stock_g = std::max(own.stock_g, tube.weighed_g);
    if (!within_law_and_stock(f.formula, left)) continue;
    f.change = {"finish_with", "", {{"product", p.name}, {"grams", figure(missing)}}};
    f.objective = judge.objective(own(f.formula, left));
    if (!best || f.objective < best->objective) best = std::move(f);
  }
  return best;
}

// What the bowl was to give: the wish where there is one and no later bowl brings it, else what it gives.
Result<std::vector<Target>> wish_of(const Visit& visit, const Found& found, const Bowl& bowl,
                                    const std::vector<Bowl>& bowls) {
  const bool on_the_way = std::any_of(bowl.zones.begin(), bowl.zones.end(),
                                      [&](const std::string& zone) { return followed(bowl, zone, bowls); });
  auto wish = visit.aims.empty() || on_the_way ? as_it_makes(visit, found) : aim(visit.head, visit.aims, visit.shelf);
  if (wish)
    std::erase_if(*wish, [&](const Target& t) {
      return std::find(bowl.zones.begin(), bowl.zones.end(), t.zone) == bowl.zones.end();
    });
  return wish;
}

Remade made_without(const Visit& visit, const Found& found, const Bowl& bowl, const std::vector<Target>& wish,
                    const EmptyTube& tube, const FormulateOptions& options) {
  const FormulaPolicy& policy = visit.policy.formula;
  const std::string maker = maker_of(bowl.formula, visit.shelf);
  Shelf others = visit.shelf;
  std::erase_if(others.products, [&](const Product& p) { return p.id == tube.product; });
  const Shelf same_maker = part_of(others, [&](const Product& p) {
    const Range* range = find_range(visit.shelf, p.range);
    return range && range->maker == maker;
  });
  const Situation& now = found.now;
  Remade r;
  r.label = bowl.label;
  const std::vector<SearchZone> zones = search_zones(now, wish, policy);
  std::vector<int> served;
  double weight = 0;
  const double total = grams(bowl.formula);
  for (size_t i = 0; i < zones.size(); ++i) served.push_back(static_cast<int>(i)), weight += zones[i].weight;
  Judge judge(now, zones, served, std::max(weight, 1e-9), same_maker, policy, total,
              longer_than_told(found.step, zones, served));
  auto best = best_bowl(visit.head, now, wish, bowl.zones, same_maker, policy, options, bowl.label);
  const auto is_fine = [&](double objective) {
    return !best || objective <= best->objective + Constants{}.fine_within;
  };
  if (tube.weighed_g > 0) {
    const auto done = zones.empty() ? std::nullopt : finished(judge, bowl, tube, visit.shelf);
    if (done && is_fine(done->objective)) {
      r.bowl = mixed(bowl, done->formula, done->objective, visit.shelf);
      r.changes.push_back(done->change);
      return r;
    }
    r.notes.push_back({"weighed_is_lost", "", {{"bowl", bowl.label}, {"grams", figure(tube.weighed_g)}}});
  }
  const auto edit = zones.empty()
                        ? std::nullopt
                        : without_it(judge, own(bowl.formula, visit.shelf), tube.product, visit.shelf, policy);
  if (edit && is_fine(edit->objective)) {
    r.bowl = mixed(bowl, pour(edit->own, total, same_maker, policy), edit->objective, visit.shelf);
    r.changes = edit->changes;
    return r;
  }
  if (!best) {
    best = best_bowl(visit.head, now, wish, bowl.zones, others, policy, options, bowl.label);
    if (best) r.notes.push_back({"other_maker_skin_test", "", {{"bowl", bowl.label}}});
  }
  if (!best) {
    r.notes.push_back({"nothing_may_replace", "", {{"bowl", bowl.label}}});
    return r;
  }
  r.bowl = in_grams_of(bowl, std::move(*best), visit.shelf, policy);
  r.bowl.bowl.step = bowl.step;
  r.changes.push_back({"another_bowl", "", {{"bowl", bowl.label}}});
  return r;
}

double grams_of(const Formula& f, const std::string& product) {
  double sum = 0;
  for (const Part& p : f.parts)
    if (p.product == product) sum += p.grams;
  return sum;
}

}  // namespace

Result<std::vector<Remade>> substitute(const Visit& visit, const EmptyTube& tube, const FormulateOptions& options) {
  if (visit.bowls.empty()) return tl::unexpected(Problems{{"no_bowls", "/bowls", {}}});
  if (!find_product(visit.shelf, tube.product))
    return tl::unexpected(Problems{{"unknown_product", "", {{"product", tube.product}}}});
  const std::vector<Bowl> bowls = by_step(visit.bowls);
  double most = 0;
  for (const Bowl& b : bowls) most = std::max(most, grams_of(b.formula, tube.product));
  if (!(tube.weighed_g >= 0) || (tube.weighed_g > 0 && tube.weighed_g >= most))
    return tl::unexpected(Problems{
        {"weighed_out_of_range", "/options/weighed_g", {{"value", figure(tube.weighed_g)}, {"most", figure(most)}}}});
  const auto found = found_by(visit, bowls, options.scenarios);
  if (!found) return tl::unexpected(found.error());
  std::vector<Remade> all;
  bool weighed = tube.weighed_g > 0;  // one bowl is on the scale
  for (size_t b = 0; b < bowls.size(); ++b) {
    if (!holds(bowls[b].formula, tube.product)) continue;
    EmptyTube here = tube;
    if (!weighed || grams_of(bowls[b].formula, tube.product) <= tube.weighed_g) here.weighed_g = 0;
    if (here.weighed_g > 0) weighed = false;
    const auto wish = wish_of(visit, (*found)[b], bowls[b], bowls);
    if (!wish) return tl::unexpected(wish.error());
    Remade r = made_without(visit, (*found)[b], bowls[b], *wish, here, options);
    if (!r.bowl.bowl.formula.parts.empty()) {
      auto moved = differences(visit, (*found)[b], r.bowl.bowl.formula);
      if (!moved) return tl::unexpected(moved.error());
      r.zones = std::move(*moved);
    }
    all.push_back(std::move(r));
  }
  return all;
}

}  // namespace strandline
