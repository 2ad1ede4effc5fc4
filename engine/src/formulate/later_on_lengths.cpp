#include "formulate/later_on_lengths.h"

#include <algorithm>
#include <optional>

#include "formulate/planned.h"
#include "formulate/reasons.h"
#include "mix/habits.h"
#include "mix/on_hair.h"
#include "mix/within.h"

namespace strandline {
namespace {

constexpr double kMinutes[] = {5, 10, 15};  // common practice: the last minutes of the regrowth's time

struct Tried {
  double minutes = 0, objective = 0, level_error = 0;
};

// The regrowth's recipe on these zones for so long: what it costs, and the darkest nominal miss.
Tried tried(const ChoiceInput& in, const Chosen& bowl, const std::vector<int>& lengths, double minutes) {
  const Setting& setting = in.domain.settings[static_cast<size_t>(bowl.best.setting)].setting;
  const RecipeSet& set = in.domain.sets[static_cast<size_t>(bowl.best.set)];
  const Spectrum load = set.load(bowl.best.shares, setting.ratio);
  const std::vector<float> single(load.begin(), load.end());
  Draws one = in.draws;
  one.constants = {in.draws.nominal};
  Tried t{minutes, 0, 0};
  for (int z : lengths) {
    const SearchZone& zone = in.zones[static_cast<size_t>(z)];
    const ZoneTable table = zone_table(*zone.draws, bare_chemistry(setting, minutes + zone.half_touch), in.draws);
    t.objective += zone.weight / in.total_weight *
                   (exact_mean_loss(table, zone.price, load) + setting_price(setting, zone, table.exposure));
    ZoneDraws alone = *zone.draws;
    alone.scenarios = {alone.nominal};
    const Lab lab =
        colours(zone_table(alone, bare_chemistry(setting, minutes + zone.half_touch), one), single.data()).front().lab;
    t.level_error = std::min(t.level_error, level_of_lightness(lab.l) - zone.target->level);
  }
  return t;
}

bool may_touch(const ChoiceInput& in, const Chosen& bowl, const std::vector<int>& lengths) {
  const Setting& setting = in.domain.settings[static_cast<size_t>(bowl.best.setting)].setting;
  return std::all_of(lengths.begin(), lengths.end(), [&](int z) {
    const SearchZone& zone = in.zones[static_cast<size_t>(z)];
    return forbidden(setting, *zone.span, in.policy).empty() && !out_of_place(setting, zone);
  });
}

}  // namespace

Result<Later> later_on_lengths(const ChoiceInput& in, const std::vector<Target>& targets, const Choice& best,
                               const Plan& plan, const PredictOptions& options) {
  Later out;
  std::vector<int> lengths;
  for (size_t z = 0; z < in.zones.size(); ++z)
    if (!touches_scalp(*in.zones[z].span) && !in.zones[z].area->woven) lengths.push_back(static_cast<int>(z));
  auto at_scalp = [&](const Chosen& c) { return touches_scalp(*in.zones[static_cast<size_t>(c.zones.front())].span); };
  const auto regrowth = std::find_if(best.bowls.begin(), best.bowls.end(), at_scalp);
  // Packets are open while they are painted, not later: theirs stay as they are.
  auto in_packets = [&](int z) { return in.zones[static_cast<size_t>(z)].area->woven.has_value(); };
  auto of_packets = [&](const Chosen& c) { return std::all_of(c.zones.begin(), c.zones.end(), in_packets); };
  auto of_lengths = [&](const Chosen& c) { return !at_scalp(c) && !of_packets(c); };
  const auto own = std::find_if(best.bowls.begin(), best.bowls.end(), of_lengths);
  // Only where the lengths have a bowl of their own that this would save.
  if (lengths.empty() || regrowth == best.bowls.end() || own == best.bowls.end() || in.cancelled()) return out;
  for (const Chosen& c : best.bowls)
    if (of_lengths(c) && std::any_of(c.zones.begin(), c.zones.end(), in_packets)) return out;
  if (!may_touch(in, *regrowth, lengths)) return out;
  double now = 0, saved = 0;
  for (const Chosen& c : best.bowls)
    if (of_lengths(c)) now += c.best.objective, saved += Constants{}.price_bowl;
  std::optional<Tried> found;
  double darkest = 0;
  for (double minutes : kMinutes) {
    const Tried t = tried(in, *regrowth, lengths, minutes);
    darkest = std::min(darkest, t.level_error);
    if (t.level_error >= -Constants{}.level_tolerance && (!found || t.objective < found->objective)) found = t;
  }
  const PlannedBowl& source = plan.bowls[static_cast<size_t>(regrowth - best.bowls.begin())];
  if (!found) {
    out.why.push_back({"builds_up_on_lengths", "", {{"bowl", source.bowl.label}, {"levels", figure(-darkest)}}});
    return out;
  }
  const std::string own_label = plan.bowls[static_cast<size_t>(own - best.bowls.begin())].bowl.label;
  PlannedBowl later = source;
  later.bowl.zones.clear();
  for (int z : lengths) later.bowl.zones.push_back(in.zones[static_cast<size_t>(z)].draws->id);
  Domain::OneSetting setting = in.domain.settings[static_cast<size_t>(regrowth->best.setting)];
  setting.setting.minutes = found->minutes;
  later.bowl.formula =
      pour(in.domain.sets[static_cast<size_t>(regrowth->best.set)], regrowth->best.shares, setting.setting,
           mix_grams(in.head, later.bowl.zones, in.policy).of(*setting.setting.range), in.shelf, in.policy);
  later.recipe.minutes = found->minutes;
  later.on = on_alike(in.head, later.bowl, found->minutes);
  later.grams = grams(later.bowl.formula);
  later.cost = cost(later.bowl.formula, in.shelf);
  later.objective = later.rounded_objective = found->objective + Constants{}.price_money * later.cost;
  const double objective = best.objective + later.objective - now - saved;
  if (objective > best.objective + Constants{}.other_way_worse_most ||
      !within_law_and_stock(later.bowl.formula, in.shelf))
    return out;
  for (size_t i = 0; i < best.bowls.size(); ++i)
    if (!of_lengths(best.bowls[i])) out.way.bowls.push_back(plan.bowls[i]);
  later.bowl.label = own_label;
  later.why = {{"same_mix_later", "", {{"bowl", source.bowl.label}, {"minutes", figure(found->minutes, 0)}}}};
  out.way.bowls.push_back(std::move(later));
  out.way.axis = "later_on_lengths";
  out.way.objective = objective;
  for (const PlannedBowl& b : out.way.bowls) out.way.grams += b.grams, out.way.cost += b.cost;
  auto zones = planned_zones(in, targets, out.way.bowls, options);
  if (!zones) return tl::unexpected(zones.error());
  out.way.zones = std::move(*zones);
  out.offered = true;
  return out;
}

}  // namespace strandline
