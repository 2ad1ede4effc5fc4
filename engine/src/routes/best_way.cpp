#include "routes/best_way.h"

#include <algorithm>
#include <cmath>

#include "mix/habits.h"
#include "mix/on_hair.h"
#include "mix/pour.h"
#include "mix/within.h"
#include "schedule/applying.h"

namespace strandline {
namespace {

constexpr size_t kGentlest = 6;  // ways that reach, judged by what can follow

double total_weight(const std::vector<SearchZone>& zones) {
  double sum = 0;
  for (const SearchZone& z : zones) sum += z.weight;
  return sum > 0 ? sum : 1;
}

// What the touched zones cost at best, each by itself, by bowls of one or two shades in every second scenario: enough
// to rank first steps. The steps that are told are searched in full.
double roughly(const RouteTask& task, const Situation& whole, const std::vector<std::string>& touched) {
  constexpr size_t kEvery = 2;
  std::vector<size_t> some;
  for (size_t s = 0; s < whole.draws.constants.size(); s += kEvery) some.push_back(s);
  const Situation now = with_scenarios(whole, some);
  const std::vector<SearchZone> zones = search_zones(now, task.targets, task.policy);
  const double total = total_weight(zones);
  std::vector<double> best(zones.size(), 0);
  task.options.parallel(static_cast<int>(zones.size()), [&](int begin, int end) {
    std::vector<float> loads;
    for (int i = begin; i < end; ++i) {
      const SearchZone& zone = zones[static_cast<size_t>(i)];
      if (!among(touched, zone.draws->id)) continue;
      double least = zone.leave_loss;
      for (const Domain::OneSetting& one : task.domain.settings) {
        if (!forbidden(one.setting, *zone.span, task.policy).empty() || out_of_place(one.setting, zone)) continue;
        const RecipeSet& set = task.domain.sets[static_cast<size_t>(one.set)];
        const ZoneTable table =
            zone_table(*zone.draws, bare_chemistry(one.setting, one.setting.minutes + zone.half_touch), now.draws);
        const std::vector<Shares> few = set.few();
        loads.resize(few.size() * kBands);
        for (size_t r = 0; r < few.size(); ++r) {
          const Spectrum load = set.load(few[r], one.setting.ratio);
          std::copy(load.begin(), load.end(), loads.begin() + static_cast<long>(r * kBands));
        }
        std::vector<float> losses(few.size());
        mean_losses(table, zone.price, loads.data(), static_cast<int>(few.size()), losses.data());
        const double setting = setting_price(one.setting, zone, table.exposure);
        for (size_t r = 0; r < few.size(); ++r) least = std::min(least, static_cast<double>(losses[r]) + setting);
      }
      best[static_cast<size_t>(i)] = zone.weight / total * least;
    }
  });
  double sum = 0;
  for (double b : best) sum += b;
  return sum;
}

Step first_of(const Head& head, const Tried& t, const std::vector<std::string>& zones) {
  PlannedBowl b;
  b.bowl = {"", t.formula, zones};
  b.on = on_alike(head, b.bowl, t.formula.minutes);
  return step_of(b);
}

// Every way whose hair stays within its condition, with how far it falls short.
std::vector<Tried> try_ways(const RouteTask& task, const Situation& now, Opening opening,
                            const std::vector<const SearchZone*>& zones) {
  std::vector<Tried> all;
  const std::vector<std::string> names = ids(zones);
  const MixGrams grams = mix_grams(task.head, names, task.policy);
  // On the scalp all of it leaves together; off it each zone is wrapped and leaves by itself.
  double applying = 0;
  for (const SearchZone* z : zones) {
    const double own = apply_minutes(task.head, *z->area, *z->span);
    applying = touches_scalp(*z->span) ? applying + own : std::max(applying, own);
  }
  for (FirstStep step : ways(opening, task.shelf, task.policy)) {
    if (task.options.cancelled()) break;
    // A lightener's longest time counts from its first touch; what is predicted counts from the last.
    if (opening == Opening::lighten) {
      const MinuteWindow& own = step.range->minutes;
      step.minutes = std::clamp(std::floor(own.max - applying), own.min, step.minutes);
    }
    if (std::any_of(zones.begin(), zones.end(), [&](const SearchZone* z) {
          const RangeLimits* limits = limits_on(*z->span, *step.range);
          return !forbidden(step, *z->span, task.policy).empty() || (limits && step.minutes > limits->minutes_max);
        }))
      continue;
    Tried t{step, pour(step, grams.of(*step.range), task.shelf, task.policy)};
    if (!within_law_and_stock(t.formula, task.shelf)) continue;
    const auto then = after(now, first_of(task.head, t, names), task.shelf);
    if (!then) continue;
    bool spent = false;
    for (const SearchZone& z : search_zones(*then, task.targets, task.policy)) {
      if (!among(names, z.draws->id)) continue;
      const RangeLimits* limits = limits_on(*z.span, *step.range);
      const double most = std::min(task.policy.porosity_max, limits ? limits->porosity_after_max : kNoLimit);
      spent = spent || z.span->porosity.value > most - Constants{}.porosity_left_for_colour;
      t.furthest_short = std::max(t.furthest_short, z.asked);
    }
    if (!spent) all.push_back(std::move(t));
  }
  return all;
}

}  // namespace

std::vector<std::string> ids(const std::vector<const SearchZone*>& zones) {
  std::vector<std::string> all;
  for (const SearchZone* z : zones) all.push_back(z->draws->id);
  return all;
}

std::optional<Tried> best_way(const RouteTask& task, const Situation& now, Opening opening,
                              const std::vector<const SearchZone*>& zones) {
  std::vector<Tried> all = try_ways(task, now, opening, zones);
  if (all.empty()) return std::nullopt;
  if (opening == Opening::lighten || opening == Opening::remove) {
    const double short_by = Constants{}.level_tolerance;
    const auto nearest = std::min_element(
        all.begin(), all.end(), [](const Tried& a, const Tried& b) { return a.furthest_short < b.furthest_short; });
    if (nearest->furthest_short > short_by)
      all = {*nearest};
    else
      std::erase_if(all, [&](const Tried& t) { return t.furthest_short > short_by; });
    if (all.size() > kGentlest) all.resize(kGentlest);
  }
  const std::vector<std::string> names = ids(zones);
  const double weakest = all.front().step.developer_percent;
  for (Tried& t : all) {
    const auto then = after(now, first_of(task.head, t, names), task.shelf);
    if (!then || task.options.cancelled()) return std::nullopt;
    // No stronger than it needs to be, as for any bowl.
    t.objective =
        roughly(task, *then, names) + Constants{}.price_strength_per_percent * (t.step.developer_percent - weakest);
  }
  const Tried best = *std::min_element(all.begin(), all.end(),
                                       [](const Tried& a, const Tried& b) { return a.objective < b.objective; });
  if (!required(opening) && best.objective + Constants{}.price_step >= roughly(task, now, names)) return std::nullopt;
  return best;
}

}  // namespace strandline
