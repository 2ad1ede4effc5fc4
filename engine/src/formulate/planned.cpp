#include "formulate/planned.h"

#include <algorithm>

#include "formulate/effects.h"
#include "formulate/packets.h"
#include "formulate/reasons.h"
#include "mix/habits.h"
#include "mix/on_hair.h"

namespace strandline {
namespace {

bool serves(const PlannedBowl& b, const std::string& zone) {
  return std::find(b.bowl.zones.begin(), b.bowl.zones.end(), zone) != b.bowl.zones.end();
}

PlannedBowl planned(const ChoiceInput& in, const Chosen& chosen, char label) {
  PlannedBowl b;
  b.bowl.label = std::string(1, label);
  for (int z : chosen.zones) b.bowl.zones.push_back(in.zones[static_cast<size_t>(z)].draws->id);
  const Domain::OneSetting& one = in.domain.settings[static_cast<size_t>(chosen.best.setting)];
  const RecipeSet& set = in.domain.sets[static_cast<size_t>(chosen.best.set)];
  b.bowl.formula = pour(set, chosen.best.shares, one.setting,
                        mix_grams(in.head, b.bowl.zones, in.policy).of(*one.setting.range), in.shelf, in.policy);
  const std::vector<double> minutes = minutes_on(in, chosen.best, chosen.zones);
  for (size_t z = 0; z < chosen.zones.size(); ++z)
    b.on.push_back({minutes[z], minutes[z] + in.zones[static_cast<size_t>(chosen.zones[z])].half_touch});
  b.bowl.formula.minutes = *std::min_element(minutes.begin(), minutes.end());
  b.recipe = recipe_of(in.domain, chosen.best);
  b.objective = chosen.best.objective;
  if (!chosen.joined) b.certified = recipe_of(in.domain, chosen.certified);
  b.certified_objective = chosen.certified.objective;
  constexpr size_t kTold = 10;
  for (const Candidate& c : chosen.others)
    if (b.others.size() < kTold) b.others.push_back({recipe_of(in.domain, c), c.objective});
  if (!b.others.empty()) b.runner_up = b.others[0].recipe, b.runner_up_objective = b.others[0].objective;
  b.grams = grams(b.bowl.formula);
  b.cost = cost(b.bowl.formula, in.shelf);
  // The same objective with the grams as they will be weighed.
  if (const auto real = chemistry(b.bowl.formula, in.shelf)) {
    b.on_head_peroxide_percent = real->peroxide_percent;
    b.rounded_objective = Constants{}.price_money * b.cost;
    for (int z : chosen.zones) {
      const SearchZone& zone = in.zones[static_cast<size_t>(z)];
      BowlChemistry here = *real;
      here.minutes = on(b, zone.draws->id)->middle;
      const ZoneTable table = zone_table(*zone.draws, here, in.draws);
      b.rounded_objective +=
          zone.weight / in.total_weight *
          (exact_mean_loss(table, zone.price, real->load) + setting_price(one.setting, zone, table.exposure));
    }
  }
  b.refined_objective = b.rounded_objective;
  if (auto limits = law::check_limits(composition(b.bowl.formula, in.shelf), use_of(one.setting.range->cls)))
    b.limits = *limits;
  return b;
}

}  // namespace

std::vector<std::string> short_of(const std::vector<PlannedBowl>& bowls, const Shelf& shelf) {
  std::vector<std::string> all;
  for (const Product& p : left_after(shelf, bowls).products)
    if (p.stock_g < 0) all.push_back(p.id);
  return all;
}

Shelf left_after(Shelf shelf, const std::vector<PlannedBowl>& bowls) {
  for (const PlannedBowl& b : bowls)
    for (const Part& part : b.bowl.formula.parts)
      for (Product& p : shelf.products)
        if (p.id == part.product) p.stock_g -= part.grams;
  return shelf;
}

Recipe recipe_of(const Domain& domain, const Candidate& c) {
  const Setting& s = domain.settings[static_cast<size_t>(c.setting)].setting;
  const double minutes = c.minutes.empty() ? s.minutes : *std::min_element(c.minutes.begin(), c.minutes.end());
  Recipe r{s.range->id, {}, s.developer_percent, s.ratio, minutes};
  for (int i = 0; i < 3; ++i)
    if (c.shares.eighths[i] > 0)
      r.shares.push_back(
          {domain.sets[static_cast<size_t>(c.set)].products()[static_cast<size_t>(c.shares.product[i])]->id,
           c.shares.eighths[i]});
  std::sort(r.shares.begin(), r.shares.end(), [](const Share& a, const Share& b) {
    return a.eighths != b.eighths ? a.eighths > b.eighths : a.product < b.product;
  });
  return r;
}

std::vector<PlannedBowl> planned_bowls(const ChoiceInput& in, const Choice& choice) {
  std::vector<PlannedBowl> all;
  for (size_t i = 0; i < choice.bowls.size(); ++i)
    all.push_back(planned(in, choice.bowls[i], static_cast<char>(in.first_label + i)));
  for (PlannedBowl& b : all) {
    std::vector<const SearchZone*> own;
    for (const SearchZone& z : in.zones)
      if (serves(b, z.draws->id)) own.push_back(&z);
    std::vector<double> longer;
    for (const SearchZone* z : own) longer.push_back(on(b, z->draws->id)->middle - b.bowl.formula.minutes);
    b.effects = part_effects(b.bowl.formula, own, longer, in.draws, in.shelf);
    b.why = reasons_for(b, own, in.shelf);
    for (Problem& reason : packets_of(in.head, b, in.shelf, in.policy)) b.why.push_back(std::move(reason));
  }
  return all;
}

Result<std::vector<ZonePlan>> planned_zones(const ChoiceInput& in, const std::vector<Target>& targets,
                                            const std::vector<PlannedBowl>& bowls, const PredictOptions& options) {
  std::vector<Step> steps = in.before;
  for (const PlannedBowl& b : bowls) steps.push_back(step_of(b));
  auto prediction = predict(in.head, steps, in.shelf, targets, options);
  if (!prediction) return tl::unexpected(prediction.error());
  std::vector<ZonePlan> all;
  for (const ZoneResult& r : prediction->zones) {
    ZonePlan z;
    z.result = r;
    for (const PlannedBowl& b : bowls)
      if (const auto own = on(b, r.zone)) z.bowl = b.bowl.label, z.minutes = own->minutes;
    for (const SearchZone& s : in.zones)
      if (s.draws->id == r.zone) z.why_not = reasons_against(s, r, in.domain, in.policy);
    z.reachable = z.why_not.empty();
    all.push_back(std::move(z));
  }
  return all;
}

}  // namespace strandline
