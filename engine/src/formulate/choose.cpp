#include "formulate/choose.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

#include "formulate/partition.h"
#include "mix/habits.h"
#include "mix/within.h"

namespace strandline {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr int kPlainKept = 12;  // formulas of other tubes, the plainest first

std::vector<int> zones_of(const std::vector<ZoneGroup>& groups, int mask) {
  std::vector<int> all;
  for (size_t g = 0; g < groups.size(); ++g)
    if (mask >> g & 1) all.insert(all.end(), groups[g].zones.begin(), groups[g].zones.end());
  return all;
}

// Of the head's weight.
double share_of(const ChoiceInput& in, const std::vector<int>& zones) {
  double sum = 0;
  for (int z : zones) sum += in.zones[static_cast<size_t>(z)].weight / in.total_weight;
  return sum;
}

MixGrams grams_for(const ChoiceInput& in, const std::vector<int>& zones) {
  std::vector<std::string> names;
  for (int z : zones) names.push_back(in.zones[static_cast<size_t>(z)].draws->id);
  return mix_grams(in.head, names, in.policy);
}

// Ties within 1e-6 by setting and shares.
bool in_order(Candidate a, Candidate b) {
  a.objective = std::floor(1e6 * a.objective + 0.5);
  b.objective = std::floor(1e6 * b.objective + 0.5);
  return before(a, b);
}

// As a colourist would call it: of one strength, and no more than an eighth of the colour is of other tubes.
bool same_formula(const ChoiceInput& in, const Candidate& a, const Candidate& b) {
  const auto strength = [&](const Candidate& c) {
    return in.domain.settings[static_cast<size_t>(c.setting)].setting.developer_percent;
  };
  if (a.set != b.set || strength(a) != strength(b)) return false;
  int common = 0;
  for (int i = 0; i < tubes(a.shares); ++i)
    for (int j = 0; j < tubes(b.shares); ++j)
      if (a.shares.product[i] == b.shares.product[j]) common += std::min(a.shares.eighths[i], b.shares.eighths[j]);
  return common >= kEighths - 1;
}

// The least that a recipe costs a zone, natural shade apart, and in how many minutes; the usual time where others are
// no better. Only what single precision cannot tell apart is worked out in full.
std::pair<double, double> least_over_times(const ChoiceInput& in, const Candidate& c, int z, const Spectrum& load) {
  const Setting& setting = in.domain.settings[static_cast<size_t>(c.setting)].setting;
  const SearchZone& zone = in.zones[static_cast<size_t>(z)];
  const auto fixed = in.minutes.find(z);
  std::vector<double> all =
      fixed == in.minutes.end() ? times_within(setting, zone) : std::vector<double>{fixed->second};
  if (all.empty()) all = {setting.range->minutes.min};  // never searched, yet asked about
  const std::vector<float> single(load.begin(), load.end());
  std::vector<double> rough;
  for (double m : all) {
    const ZoneTable& table = in.table(c.setting, z, m);
    float loss = 0;
    mean_losses(table, zone.price, single.data(), 1, &loss);
    rough.push_back(static_cast<double>(loss) + setting_price(setting, zone, table.exposure));
  }
  const double near = *std::min_element(rough.begin(), rough.end()) + 2 * kRounding;
  std::pair<double, double> best{kNever, all.front()};
  constexpr double kSame = 1e-9;
  for (size_t k = 0; k < all.size(); ++k) {
    if (rough[k] > near) continue;
    const ZoneTable& table = in.table(c.setting, z, all[k]);
    const double own = exact_mean_loss(table, zone.price, load) + setting_price(setting, zone, table.exposure);
    if (own < best.first - kSame) best = {own, all[k]};
  }
  return best;
}

}  // namespace

double exact_objective(const ChoiceInput& in, const Candidate& c, const std::vector<int>& zones,
                       std::vector<double>* minutes, std::vector<double>* by_zone) {
  const Domain::OneSetting& one = in.domain.settings[static_cast<size_t>(c.setting)];
  const RecipeSet& set = in.domain.sets[static_cast<size_t>(c.set)];
  const Spectrum load = set.load(c.shares, one.setting.ratio);
  double sum = 0;
  for (int z : zones) {
    const SearchZone& zone = in.zones[static_cast<size_t>(z)];
    const auto [least, on] = least_over_times(in, c, z, load);
    if (minutes) minutes->push_back(on);
    if (by_zone) by_zone->push_back(least);
    sum += zone.weight / in.total_weight * least;
  }
  return sum;
}

std::vector<double> minutes_on(const ChoiceInput& in, const Candidate& c, const std::vector<int>& zones) {
  if (c.minutes.size() == zones.size()) return c.minutes;
  std::vector<double> all;
  exact_objective(in, c, zones, &all);
  return all;
}

Wish bowl_wish(const ChoiceInput& in, const std::vector<int>& zones) {
  Wish wish{zones};
  wish.grams = grams_for(in, zones);
  wish.minutes = in.minutes;
  return wish;
}

std::vector<Candidate> exact_list(const ChoiceInput& in, std::vector<Candidate> kept, const std::vector<int>& zones) {
  std::vector<Candidate> all;
  const MixGrams grams = grams_for(in, zones);
  for (Candidate& c : kept) {
    if (!all.empty() && in.cancelled()) break;
    const Setting& setting = in.domain.settings[static_cast<size_t>(c.setting)].setting;
    const double money = poured_price(in.domain.sets[static_cast<size_t>(c.set)], c.shares, setting,
                                      grams.of(*setting.range), in.shelf, in.policy);
    if (!std::isfinite(money)) continue;
    c.minutes.clear();
    c.objective = exact_objective(in, c, zones, &c.minutes) + money;
    all.push_back(c);
  }
  std::sort(all.begin(), all.end(), in_order);
  return all;
}

std::vector<Candidate> other_formulas(const ChoiceInput& in, const std::vector<Candidate>& list,
                                      const Candidate& best) {
  std::vector<Candidate> others;
  for (const Candidate& c : list)
    if (!same_formula(in, c, best) &&
        std::none_of(others.begin(), others.end(), [&](const Candidate& seen) { return same_formula(in, c, seen); }))
      others.push_back(c);
  return others;
}

std::vector<Candidate> plain_list(const ChoiceInput& in, Wish wish, const Candidate& certified) {
  if (!in.plainest || in.cancelled()) return {};
  std::vector<double> at_best;
  exact_objective(in, certified, wish.zones, nullptr, &at_best);
  return plain_list_within(in, std::move(wish), certified.objective, at_best);
}

std::vector<Candidate> plain_list_within(const ChoiceInput& in, Wish wish, double best,
                                         const std::vector<double>& at_best) {
  if (!in.plainest || in.cancelled()) return {};
  const std::vector<int> zones = wish.zones;
  constexpr double kSame = 1e-9;
  const double limit = best + share_of(in, zones) * in.policy.indifference_levels + kSame;
  const MixGrams grams = grams_for(in, zones);
  const auto judge = [&](Candidate own) -> std::optional<Candidate> {
    const Setting& setting = in.domain.settings[static_cast<size_t>(own.setting)].setting;
    std::vector<double> by_zone;
    own.minutes.clear();
    own.objective = exact_objective(in, own, zones, &own.minutes, &by_zone) +
                    poured_price(in.domain.sets[static_cast<size_t>(own.set)], own.shares, setting,
                                 grams.of(*setting.range), in.shelf, in.policy);
    bool fine = own.objective <= limit;
    for (size_t z = 0; z < by_zone.size(); ++z)
      fine = fine && by_zone[z] <= at_best[z] + in.policy.zone_indifference_levels + kSame;
    return fine ? std::optional(std::move(own)) : std::nullopt;
  };
  wish.worth = limit;
  wish.keep = kPlainKept;
  return in.plainest(wish, judge);
}

Chosen plain_bowl(const ChoiceInput& in, const Wish& wish, const std::vector<Candidate>& exact) {
  Chosen c;
  c.zones = wish.zones;
  c.certified = exact[0];
  c.list = plain_list(in, wish, c.certified);
  for (const Candidate& own : exact)
    if (std::none_of(c.list.begin(), c.list.end(), [&](const Candidate& seen) { return same_recipe(own, seen); }))
      c.list.push_back(own);
  c.best = c.list[0];
  c.others = other_formulas(in, c.list, c.best);
  return c;
}

double Choice::plain_gap() const {
  double sum = 0;
  for (const Chosen& bowl : bowls) sum += bowl.gap();
  return sum;
}

Chooser::Chooser(const ChoiceInput& in, std::vector<ZoneGroup> groups, BowlLists lists)
    : in_(in), lists_(std::move(lists)), kinds_(2) {
  for (ZoneGroup& g : groups) kinds_[g.at_scalp ? 0 : 1].groups.push_back(std::move(g));
  for (Kind& kind : kinds_) {
    const size_t masks = size_t{1} << kind.groups.size();
    kind.least.assign(masks, 0);
    kind.found.assign(masks, false);
    kind.exact.resize(masks);
    for (const ZoneGroup& g : kind.groups) {
      kind.leave.push_back(leave_cost(g));
      Wish wish{g.zones};
      wish.keep = 1;
      const BowlList alone = lists_(wish);
      stopped_ = stopped_ || !alone.complete;
      kind.alone.push_back(alone.bound);
    }
    keep_apart(kind);
    raise(kind, 0, 0);
  }
}

// Sets of groups whose white differs too much to share a bowl, as long as there are bowls enough for that.
void Chooser::keep_apart(Kind& kind) {
  kind.closed.assign(kind.least.size(), false);
  const auto apart = [&](size_t g, size_t h) {
    for (int a : kind.groups[g].zones)
      for (int b : kind.groups[h].zones)
        if (apart_by_white(in_.zones[static_cast<size_t>(a)], in_.zones[static_cast<size_t>(b)])) return true;
    return false;
  };
  for (size_t mask = 1; mask < kind.closed.size(); ++mask)
    for (size_t g = 0; g < kind.groups.size() && !kind.closed[mask]; ++g)
      for (size_t h = 0; h < g && !kind.closed[mask]; ++h)
        kind.closed[mask] = (mask >> g & 1) && (mask >> h & 1) && apart(g, h);
  std::vector<double> cost(kind.closed.size(), 1);
  for (size_t mask = 0; mask < cost.size(); ++mask)
    if (kind.closed[mask]) cost[mask] = kNever;
  const std::vector<double> never(kind.groups.size(), kNever);
  const int most = std::max(1, in_.policy.bowls_max - 1);  // the other span kind wants one too
  const std::vector<Cover> all = covers(cost, never, most, 0);
  if (std::none_of(all.begin(), all.end(), [](const Cover& c) { return std::isfinite(c.cost); }))
    kind.closed.assign(kind.closed.size(), false);
  for (size_t mask = 1; mask < kind.closed.size(); ++mask)
    if (kind.closed[mask]) kind.found[mask] = true, kind.least[mask] = kNever;
}

int Chooser::sets() const {
  std::ptrdiff_t all = 0;
  for (const Kind& kind : kinds_)
    all += std::count(kind.found.begin(), kind.found.end(), true) -
           std::count(kind.closed.begin(), kind.closed.end(), true);
  return static_cast<int>(all);
}

double Chooser::leave_cost(const ZoneGroup& group) const {
  double sum = 0;
  for (int z : group.zones)
    sum += in_.zones[static_cast<size_t>(z)].weight / in_.total_weight * in_.zones[static_cast<size_t>(z)].leave_loss;
  return sum;
}

// A set costs at least what a part of it costs in a bowl of its own, and the rest of it at best.
void Chooser::raise(Kind& kind, size_t mask, double least) {
  for (size_t other = 1; other < kind.least.size(); ++other) {
    if ((other & mask) != mask) continue;
    double sum = least;
    for (size_t g = 0; g < kind.groups.size(); ++g)
      if ((other & ~mask) >> g & 1) sum += kind.alone[g];
    if (!kind.found[other]) kind.least[other] = std::max(kind.least[other], sum);
  }
}

void Chooser::search(Kind& kind, int mask, double worth) {
  const size_t m = static_cast<size_t>(mask);
  Wish wish = bowl_wish(in_, zones_of(kind.groups, mask));
  wish.worth = worth + kRounding;
  wish.keep = kBestKept;
  BowlList list = lists_(wish);
  std::vector<Candidate> exact = exact_list(in_, std::move(list.candidates), wish.zones);
  if (!list.complete) {
    stopped_ = true;
    if (!kind.found[m]) kind.exact[m] = std::move(exact);
    raise(kind, m, list.bound);
    return;
  }
  const double least = exact.empty() ? kNever : exact[0].objective;
  if (least > worth) {
    raise(kind, m, worth);
    return;
  }
  raise(kind, m, least);
  kind.least[m] = least;
  kind.exact[m] = std::move(exact);
  kind.found[m] = true;
}

Chooser::Split Chooser::cheapest(int most, const std::vector<double> (&costs)[2]) const {
  std::vector<Cover> by_kind[2];
  for (size_t k = 0; k < 2; ++k) by_kind[k] = covers(costs[k], kinds_[k].leave, most, Constants{}.price_bowl);
  Split best;
  best.cost = kNever;
  for (size_t i = 0; i <= static_cast<size_t>(most); ++i)
    for (size_t j = 0; i + j <= static_cast<size_t>(most); ++j)
      if (const double both = by_kind[0][i].cost + by_kind[1][j].cost; both < best.cost)
        best = {both, {by_kind[0][i].masks, by_kind[1][j].masks}};
  return best;
}

Chooser::Split Chooser::cheapest_found(int most) const {
  std::vector<double> costs[2];
  for (size_t k = 0; k < 2; ++k)
    for (const auto& list : kinds_[k].exact) costs[k].push_back(list.empty() ? kNever : list[0].objective);
  return cheapest(most, costs);
}

Choice Chooser::choose(int bowls_max) {
  const int most = std::min({in_.policy.bowls_max, bowls_max, kBowlsMost});
  Split bounded = cheapest_bounded(most), found = cheapest_found(most);
  constexpr double kSame = 1e-9;
  while (!stopped_ && bounded.cost < found.cost - kSame) {
    // Of what is not known yet, the set of most groups: it moves the bound most.
    Kind* kind = nullptr;
    int next = 0;
    for (size_t k = 0; k < 2; ++k)
      for (int mask : bounded.masks[k])
        if (!kinds_[k].found[static_cast<size_t>(mask)] &&
            (!kind || std::popcount(static_cast<unsigned>(mask)) > std::popcount(static_cast<unsigned>(next))))
          kind = &kinds_[k], next = mask;
    // No cover with it costs less than the others of this one do at least.
    search(*kind, next, found.cost - (bounded.cost - kind->least[static_cast<size_t>(next)]));
    bounded = cheapest_bounded(most), found = cheapest_found(most);
  }
  Choice choice;
  choice.objective = found.cost;
  choice.bound = std::min(bounded.cost, found.cost);
  for (size_t k = 0; k < 2; ++k)
    for (int mask : found.masks[k]) {
      Kind& kind = kinds_[k];
      const size_t m = static_cast<size_t>(mask);
      choice.bowls.push_back(plain_bowl(in_, bowl_wish(in_, zones_of(kind.groups, mask)), kind.exact[m]));
      choice.objective += choice.bowls.back().gap();
    }
  return choice;
}

}  // namespace strandline
