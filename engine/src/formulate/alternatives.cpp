#include "formulate/alternatives.h"

#include <algorithm>

#include "formulate/evenness.h"
#include "formulate/light_side.h"
#include "formulate/planned.h"

namespace strandline {
namespace {

constexpr const char* kLighterFirst = "lighter_first";

struct Extremes {
  double strongest = 0;  // % in the bottle
  int tubes = 0;
  double price = 0;  // dearest colour part, per g
  double minutes = 0;
  bool permanent = false;
};

double price_per_g(const ChoiceInput& in, const Candidate& c) {
  return in.domain.sets[static_cast<size_t>(c.set)].price_per_g(c.shares);
}

double strength(const ChoiceInput& in, const Candidate& c) {
  return in.domain.settings[static_cast<size_t>(c.setting)].setting.developer_percent;
}

Extremes extremes(const ChoiceInput& in, const Choice& choice) {
  Extremes e;
  for (const Chosen& bowl : choice.bowls) {
    e.strongest = std::max(e.strongest, strength(in, bowl.best));
    e.tubes = std::max(e.tubes, tubes(bowl.best.shares));
    e.price = std::max(e.price, price_per_g(in, bowl.best));
    const Setting& setting = in.domain.settings[static_cast<size_t>(bowl.best.setting)].setting;
    for (double minutes : minutes_on(in, bowl.best, bowl.zones)) e.minutes = std::max(e.minutes, minutes);
    e.permanent = e.permanent || permanent(setting);
  }
  return e;
}

bool obeys(const ChoiceInput& in, const Chosen& bowl, const Allowed& allowed) {
  const std::vector<double> minutes = minutes_on(in, bowl.best, bowl.zones);
  return strength(in, bowl.best) < allowed.strength_below && tubes(bowl.best.shares) <= allowed.tubes_most &&
         price_per_g(in, bowl.best) <= allowed.price_most &&
         *std::max_element(minutes.begin(), minutes.end()) < allowed.minutes_below &&
         !(allowed.fades_out && permanent(in.domain.settings[static_cast<size_t>(bowl.best.setting)].setting));
}

bool same_bowls(const Choice& a, const Choice& b) {
  auto same = [](const Chosen& x, const Chosen& y) {
    return x.zones == y.zones && x.best.setting == y.best.setting &&
           std::equal(std::begin(x.best.shares.product), std::end(x.best.shares.product),
                      std::begin(y.best.shares.product)) &&
           std::equal(std::begin(x.best.shares.eighths), std::end(x.best.shares.eighths),
                      std::begin(y.best.shares.eighths));
  };
  return std::equal(a.bowls.begin(), a.bowls.end(), b.bowls.begin(), b.bowls.end(), same);
}

double longest(const std::vector<PlannedBowl>& bowls) {
  double minutes = 0;
  for (const PlannedBowl& b : bowls) minutes = std::max(minutes, b.bowl.formula.minutes);
  return minutes;
}

}  // namespace

Result<std::vector<Alternative>> alternatives(const ChoiceInput& in, const std::vector<Target>& targets,
                                              Chooser& chooser, BowlSearch& search, const Choice& best,
                                              const Plan& plan, const PredictOptions& options) {
  std::vector<Alternative> out;
  if (best.bowls.empty() || in.cancelled()) return out;
  const Extremes now = extremes(in, best);
  // The same zones share the same bowls, each bowl the best that the axis allows.
  auto same_sharing = [&](const Allowed& allowed) {
    Choice choice;
    choice.objective = best.objective - best.uneven;
    for (const Chosen& bowl : best.bowls) {
      if (in.cancelled()) return Choice{};
      if (obeys(in, bowl, allowed)) {
        choice.bowls.push_back(bowl);
        continue;
      }
      Wish wish = bowl_wish(in, bowl.zones);
      wish.allowed = allowed;
      wish.worth = bowl.best.objective + Constants{}.other_way_worse_most;
      wish.keep = 1;
      // As near as the best, if there is one that the axis allows; else the nearest that it allows.
      Chosen other{.zones = bowl.zones,
                   .best = {},
                   .certified = bowl.certified,
                   .others = {},
                   .list = plain_list(in, wish, bowl.certified),
                   .joined = bowl.joined};
      if (other.list.empty()) {
        const auto list = exact_list(in, search.best(wish), bowl.zones);
        if (list.empty()) return Choice{};
        other = plain_bowl(in, wish, list);
      }
      other.best = other.list[0];
      other.others = other_formulas(in, other.list, other.best);
      choice.bowls.push_back(std::move(other));
      choice.objective += choice.bowls.back().best.objective - bowl.best.objective;
    }
    return choice;
  };
  std::vector<std::pair<const char*, Choice>> found;
  found.emplace_back("gentler", same_sharing({.strength_below = now.strongest - 1e-9}));
  if (now.tubes > 1) found.emplace_back("simpler", same_sharing({.tubes_most = now.tubes - 1}));
  found.emplace_back("cheaper", same_sharing({.price_most = Constants{}.cheaper_colour_share * now.price}));
  found.emplace_back("quicker", same_sharing({.minutes_below = now.minutes - 1e-9}));
  if (now.permanent) found.emplace_back("softer_line", same_sharing({.fades_out = true}));
  if (best.bowls.size() > 1) found.emplace_back("fewer_bowls", chooser.choose(static_cast<int>(best.bowls.size()) - 1));

  for (auto& [axis, choice] : found) even_out(in, choice);
  found.emplace_back(kLighterFirst, on_the_light_side(in, best));

  auto zones_served = [](const Choice& c) {
    size_t sum = 0;
    for (const Chosen& bowl : c.bowls) sum += bowl.zones.size();
    return sum;
  };
  std::vector<const Choice*> seen = {&best};
  for (const auto& [axis, choice] : found) {
    if (in.cancelled()) break;
    // Leaving more of the head uncoloured is not another way to the wish.
    if (zones_served(choice) < zones_served(best) ||
        choice.objective > best.objective + Constants{}.other_way_worse_most)
      continue;
    if (std::any_of(seen.begin(), seen.end(), [&, &c = choice](const Choice* s) { return same_bowls(*s, c); }))
      continue;
    seen.push_back(&choice);
    Alternative other;
    other.axis = axis;
    other.bowls = planned_bowls(in, choice);
    other.objective = choice.objective;
    if (other.axis == kLighterFirst) other.bowls.front().why.push_back({"deepen_at_basin", "", {}});
    for (const PlannedBowl& b : other.bowls) other.grams += b.grams, other.cost += b.cost;
    if (other.axis == "cheaper" && other.cost >= plan.cost) continue;
    // A bowl of another setting may be best with a longer time of its own.
    if (other.axis == "quicker" && longest(other.bowls) >= longest(plan.bowls)) continue;
    // Not where another way is nearer and no dearer: it would be chosen for nothing.
    if (other.axis == "cheaper" && std::any_of(out.begin(), out.end(), [&](const Alternative& a) {
          return a.cost <= other.cost && a.objective <= other.objective;
        }))
      continue;
    auto zones = planned_zones(in, targets, other.bowls, options);
    if (!zones) return tl::unexpected(zones.error());
    other.zones = std::move(*zones);
    out.push_back(std::move(other));
  }
  return out;
}

}  // namespace strandline
