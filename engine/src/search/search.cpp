#include "search/search.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <tuple>

#include "mix/habits.h"
#include "mix/pour.h"
#include "mix/within.h"
#include "search/descent.h"

namespace strandline {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

// The plainest first where that is asked, then the lowest bound, then in a fixed order.
auto turn_of(const Branch& b) {
  return std::make_tuple(b.plain, b.bound, b.setting, b.eighths[0], b.eighths[1], b.eighths[2], b.node[0], b.node[1],
                         b.node[2]);
}
bool later(const Branch& a, const Branch& b) { return turn_of(b) < turn_of(a); }

// A heap of branches, lowest bound in front.
void wait(std::vector<Branch>& heap, const Branch& b) {
  heap.push_back(b);
  std::push_heap(heap.begin(), heap.end(), later);
}
Branch take_first(std::vector<Branch>& heap) {
  std::pop_heap(heap.begin(), heap.end(), later);
  const Branch b = heap.back();
  heap.pop_back();
  return b;
}
double lowest(const std::vector<Branch>& heap) { return heap.empty() ? kNever : heap.front().bound; }
bool matters(const std::vector<Branch>& heap, double limit) { return !heap.empty() && heap.front().bound <= limit; }

}  // namespace

struct BowlSearch::Run {
  explicit Run(const Wish& w) : wish(w), best(w.worth, w.keep) {}
  Wish wish;                        // zones the heaviest first
  std::map<int, Terrain> terrains;  // by setting
  std::vector<Branch> branches;     // heap: not divided yet
  std::vector<Branch> fresh;        // single recipes that only their box has bounded
  std::vector<Branch> singles;      // heap: recipes to evaluate
  BestFew best;
  BestFew seen;      // of all that was evaluated
  int together = 4;  // branches divided in one round
  // Where the plainest are asked for: what is plain, per range of the domain.
  std::optional<PlainWish> plain_wish = {};
  std::map<int, PlainGround> plain_grounds = {};
  std::vector<SettingZone*> needed(const std::vector<Branch>& of) const;
};

BowlSearch::BowlSearch(const Domain& domain, const std::vector<SearchZone>& zones, const Draws& draws,
                       double total_weight, const FormulaPolicy& policy, const FormulateOptions& options)
    : domain_(domain),
      zones_(zones),
      draws_(draws),
      total_weight_(total_weight),
      policy_(policy),
      options_(options),
      made_(domain, zones, draws, total_weight, policy),
      floors_(zones.size(), 0) {}

// The times that a zone may have under a setting; empty where it has none.
std::vector<double> BowlSearch::minutes(const Wish& wish, int setting, int zone) const {
  const Setting& s = domain_.settings[static_cast<size_t>(setting)].setting;
  const SearchZone& on = zones_[static_cast<size_t>(zone)];
  if (const auto own = wish.minutes.find(zone); own != wish.minutes.end())
    return within_rules(s, own->second, on) ? std::vector<double>{own->second} : std::vector<double>{};
  std::vector<double> all = times_within(s, on);
  std::erase_if(all, [&](double m) { return m >= wish.allowed.minutes_below; });
  return all;
}

// What is tabulated of these branches' settings, as far as their times are not ruled out.
std::vector<SettingZone*> BowlSearch::Run::needed(const std::vector<Branch>& of) const {
  std::set<std::tuple<int, size_t, size_t>> all;
  for (const Branch& b : of) {
    const Terrain& t = terrains.at(b.setting);
    for (size_t z = 0; z < t.zones.size(); ++z)
      for (size_t k = 0; k < t.zones[z].times.size(); ++k)
        if (t.zones[z].alive(b, k)) all.insert({b.setting, z, k});
  }
  std::vector<SettingZone*> made;
  for (const auto& [setting, z, k] : all) made.push_back(terrains.at(setting).zones[z].times[k].made);
  return made;
}

// Every setting that may serve the zones waits undivided, at its price before any optics. False where it was stopped
// before each had been looked at.
bool BowlSearch::start(Run& run) {
  const Allowed& allowed = run.wish.allowed;
  struct Place {
    int setting;
    std::vector<std::vector<double>> minutes;  // per zone
    std::optional<Terrain> terrain = {};
  };
  std::vector<Place> places;
  for (int i = 0; i < static_cast<int>(domain_.settings.size()); ++i) {
    const Setting& setting = domain_.settings[static_cast<size_t>(i)].setting;
    if (setting.developer_percent >= allowed.strength_below) continue;
    if (allowed.fades_out && permanent(setting)) continue;
    if (allowed.set >= 0 && allowed.set != domain_.settings[static_cast<size_t>(i)].set) continue;
    if (!made_.may_serve(i, run.wish.zones)) continue;
    std::vector<std::vector<double>> own;
    for (int z : run.wish.zones) own.push_back(minutes(run.wish, i, z));
    if (std::any_of(own.begin(), own.end(), [](const auto& m) { return m.empty(); })) continue;
    places.push_back({i, std::move(own)});
  }
  options_.parallel(static_cast<int>(places.size()), [&](int begin, int end) {
    for (int i = begin; i < end && !options_.cancelled(); ++i) {
      Place& p = places[static_cast<size_t>(i)];
      const Range& range = *domain_.settings[static_cast<size_t>(p.setting)].setting.range;
      p.terrain = made_.terrain(p.setting, run.wish.zones, p.minutes, run.wish.grams.of(range));
    }
  });
  for (Place& p : places) {
    if (!p.terrain) return false;
    Terrain& t = run.terrains.emplace(p.setting, std::move(*p.terrain)).first->second;
    if (run.plain_wish)
      t.plain = &run.plain_grounds
                     .try_emplace(domain_.settings[static_cast<size_t>(p.setting)].set, *t.ground, *run.plain_wish)
                     .first->second;
    constexpr double kSame = 1e-12;  // the same prices added in another order
    t.price_most = allowed.price_most + kSame;
    for (size_t z = 0; z < t.zones.size(); ++z) t.zones[z].floor = floors_[static_cast<size_t>(run.wish.zones[z])];
    counts_.recipes += t.ground->set->size();
    for (Branch b : undivided(p.setting)) {
      if (b.parts() > allowed.tubes_most || !holds_recipes(*t.ground, b)) continue;
      b.bound = least_price(t, b);
      if (t.plain) b.plain = t.plain->least(*t.setting, b);
      if (std::isfinite(b.bound) && b.bound <= run.wish.worth) wait(run.branches, b);
    }
  }
  run.best = BestFew(run.plain_wish ? run.wish.worth : std::min(run.wish.worth, limit_by_known(run)), run.wish.keep);
  return true;
}

// What recipes that were good for other zones cost here; nothing beyond the last one kept of them will be kept.
double BowlSearch::limit_by_known(const Run& run) {
  std::vector<Candidate> some;
  for (const Candidate& c : known_) {
    const auto t = run.terrains.find(c.setting);
    if (t == run.terrains.end() || tubes(c.shares) > run.wish.allowed.tubes_most) continue;
    if (t->second.ground->set->price_per_g(c.shares) <= t->second.price_most) some.push_back(c);
  }
  const size_t keep = static_cast<size_t>(run.wish.keep);
  if (some.size() < keep) return kNever;
  std::vector<double> costs = evaluate(some, run.wish);
  std::sort(costs.begin(), costs.end());
  return costs[keep - 1] + kRounding;
}

// Divides the branches whose turn it is; false when none is left that matters. All of a round see the same limit, so
// that what is done does not depend on who does it.
bool BowlSearch::divide(Run& run) {
  const double limit = run.best.limit();
  std::vector<Branch> round;
  // Of the plainest only what is as plain in what counts most is divided now.
  const std::uint64_t frontier = run.plain_wish && !run.branches.empty() ? as_plain(run.branches.front().plain) : 0;
  while (static_cast<int>(round.size()) < run.together && matters(run.branches, limit) &&
         run.branches.front().plain <= frontier) {
    const Branch b = take_first(run.branches);
    const Terrain& t = run.terrains.at(b.setting);
    if (!single(*t.ground, b))
      round.push_back(b);
    else if (least_price_per_g(*t.ground, b) <= t.price_most)
      run.fresh.push_back(b);
  }
  if (round.empty()) return !run.fresh.empty();
  constexpr int kTogetherMost = 32;
  run.together = std::min(2 * run.together, kTogetherMost);
  need_boxes(run.needed(round), options_.parallel);
  std::vector<Descent> done(round.size());
  options_.parallel(static_cast<int>(round.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) {
      const Branch& b = round[static_cast<size_t>(i)];
      done[static_cast<size_t>(i)] = descend(run.terrains.at(b.setting), b, limit, frontier, options_.cancelled);
    }
  });
  for (const Descent& d : done) {
    run.fresh.insert(run.fresh.end(), d.singles.begin(), d.singles.end());
    for (const Branch& b : d.left) wait(run.branches, b);
    counts_.boxes += d.boxes;
  }
  return true;
}

// The closer bound of every fresh recipe.
void BowlSearch::bound_singles(Run& run) {
  need_groups(run.needed(run.fresh), options_.parallel);
  const double limit = run.best.limit();
  options_.parallel(static_cast<int>(run.fresh.size()), [&](int begin, int end) {
    float load[kBands];
    for (int i = begin; i < end; ++i) {
      Branch& b = run.fresh[static_cast<size_t>(i)];
      const Terrain& t = run.terrains.at(b.setting);
      const Spectrum exact = t.ground->set->load(recipe_of(*t.ground, b), t.ratio);
      std::copy(exact.begin(), exact.end(), load);
      double sum = least_price(t, b);
      for (size_t z = 0; z < t.zones.size() && sum <= limit; ++z) {
        const Terrain::Zone& zone = t.zones[z];
        const double others = sum - zone.least();
        double least = kNever;
        for (size_t k = 0; k < zone.times.size(); ++k) {
          if (!zone.alive(b, k)) continue;
          const Terrain::Zone::Time& time = zone.times[k];
          const double useful = std::min(limit - others, least);
          const double enough = (useful - time.price) / std::max(zone.share, 1e-9) + 1e-3;
          float low = 0;
          lower_bounds(*time.made->groups, *zone.loss, load, 1, &low, static_cast<float>(enough));
          least = std::min(least, time.price + zone.share * static_cast<double>(low));
        }
        sum = others + zone.part(least);
      }
      b.bound = std::max(b.bound, sum);
    }
  });
  counts_.bounds += static_cast<long long>(run.fresh.size());
  for (const Branch& b : run.fresh)
    if (b.bound <= limit) wait(run.singles, b);
  run.fresh.clear();
}

// The objective in single precision.
double BowlSearch::evaluate(const Candidate& c, const Wish& wish) {
  const Domain::OneSetting& one = domain_.settings[static_cast<size_t>(c.setting)];
  const RecipeSet& set = domain_.sets[static_cast<size_t>(c.set)];
  double sum = 0;
  if (const double grams = wish.grams.of(*one.setting.range); grams > 0) {
    sum += poured_price(set, c.shares, one.setting, grams, *domain_.shelf, policy_);
    if (!std::isfinite(sum)) return kNever;
  }
  const Spectrum exact = set.load(c.shares, one.setting.ratio);
  float load[kBands];
  std::copy(exact.begin(), exact.end(), load);
  for (int z : wish.zones) {
    const SearchZone& zone = zones_[static_cast<size_t>(z)];
    double least = kNever;
    for (double m : minutes(wish, c.setting, z)) {
      const ZoneTable& own = table(c.setting, z, m);
      float loss = 0;
      mean_losses(own, zone.price, load, 1, &loss);
      least = std::min(least, static_cast<double>(loss) + setting_price(one.setting, zone, own.exposure));
    }
    sum += zone.weight / total_weight_ * least;
  }
  return sum;
}

std::vector<double> BowlSearch::evaluate(const std::vector<Candidate>& all, const Wish& wish) {
  std::vector<double> costs(all.size());
  options_.parallel(static_cast<int>(all.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) costs[static_cast<size_t>(i)] = evaluate(all[static_cast<size_t>(i)], wish);
  });
  counts_.evaluations += static_cast<long long>(all.size() * wish.zones.size() * draws_.constants.size());
  return costs;
}

Candidate BowlSearch::candidate(const Branch& b) const {
  const int set = domain_.settings[static_cast<size_t>(b.setting)].set;
  return {b.bound, set, b.setting, recipe_of(made_.ground(b.setting), b), b.plain};
}

// Those of the lowest bounds, a block at a time, so that the limit falls early and little is evaluated in vain.
void BowlSearch::evaluate_some(Run& run) {
  constexpr int kBlock = 32;
  const bool last = !matters(run.branches, run.best.limit());
  do {
    std::vector<Candidate> block;
    while (static_cast<int>(block.size()) < kBlock && matters(run.singles, run.best.limit()))
      block.push_back(candidate(take_first(run.singles)));
    if (block.empty()) break;
    const std::vector<double> costs = evaluate(block, run.wish);
    for (size_t i = 0; i < block.size(); ++i) {
      if (!std::isfinite(costs[i])) continue;
      block[i].objective = costs[i];
      run.best.offer(block[i]);
      run.seen.offer(block[i]);
    }
    run.best.trim();
  } while (last && !options_.cancelled());
}

void BowlSearch::remember(Run& run, const BowlList& list) {
  constexpr size_t kKnownMost = 256;
  for (const Candidate& c : run.seen.take()) {
    std::erase_if(known_, [&](const Candidate& other) { return same_recipe(c, other); });
    known_.push_back(c);
  }
  if (known_.size() > kKnownMost) known_.erase(known_.begin(), known_.end() - kKnownMost);
  if (list.complete && run.wish.zones.size() == 1 && run.wish.allowed == Allowed{} && run.wish.minutes.empty()) {
    double& floor = floors_[static_cast<size_t>(run.wish.zones[0])];
    floor = std::max(floor, list.bound);
  }
}

void BowlSearch::heaviest_first(std::vector<int>& zones) const {
  std::sort(zones.begin(), zones.end(), [&](int a, int b) {
    const double x = zones_[static_cast<size_t>(a)].weight, y = zones_[static_cast<size_t>(b)].weight;
    return x != y ? x > y : a < b;
  });
}

// Recipes that are plainer than all that waits: no other can come before them. Equally plain ones wait for each other,
// so that their order does not depend on who was met first.
void BowlSearch::judge_plainest(Run& run, const Judged& judge, std::vector<Candidate>& kept) {
  const std::uint64_t waits = run.branches.empty() ? kAnyPlainness : run.branches.front().plain;
  while (!run.singles.empty() && run.singles.front().plain < waits &&
         kept.size() < static_cast<size_t>(run.wish.keep)) {
    std::vector<Candidate> alike;  // one plainness
    while (!run.singles.empty() && (alike.empty() || run.singles.front().plain == alike[0].plain))
      alike.push_back(candidate(take_first(run.singles)));
    const std::vector<double> costs = evaluate(alike, run.wish);
    std::vector<Candidate> passed;
    for (size_t i = 0; i < alike.size(); ++i)
      if (costs[i] <= run.wish.worth + kRounding)
        if (auto judged = judge(alike[i])) passed.push_back(std::move(*judged));
    std::sort(passed.begin(), passed.end(), before);
    for (Candidate& c : passed)
      if (std::none_of(kept.begin(), kept.end(), [&](const Candidate& seen) { return same_tubes(c, seen); }))
        kept.push_back(std::move(c));
  }
}

std::vector<Candidate> BowlSearch::plainest(const Wish& wish, const Judged& judge) {
  Run run(wish);
  heaviest_first(run.wish.zones);
  run.plain_wish = plain_wish(zones_, wish.zones);
  run.wish.worth += kRounding;
  std::vector<Candidate> kept;
  if (!start(run)) return kept;
  while (kept.size() < static_cast<size_t>(wish.keep) && !options_.cancelled()) {
    const bool more = divide(run);
    if (options_.cancelled()) break;
    bound_singles(run);
    judge_plainest(run, judge, kept);
    if (!more && run.singles.empty()) break;
  }
  return kept;
}

BowlList BowlSearch::find(const Wish& wish) {
  Run run(wish);
  heaviest_first(run.wish.zones);
  BowlList list;
  const bool started = start(run);
  bool more = true;
  while (started && more && !options_.cancelled()) {
    more = divide(run);
    if (options_.cancelled()) break;
    bound_singles(run);
    evaluate_some(run);
    more = more || matters(run.singles, run.best.limit());
  }
  // Stopped in the middle of a round, fresh recipes may be left too.
  double rest = started ? std::min(lowest(run.branches), lowest(run.singles)) : 0;
  for (const Branch& b : run.fresh) rest = std::min(rest, b.bound);
  list.complete = !more;
  list.candidates = run.best.take();
  list.bound = list.candidates.empty() ? wish.worth : list.candidates[0].objective - kRounding;
  if (!list.complete) list.bound = std::min(list.bound, rest);
  counts_.cancelled = counts_.cancelled || !list.complete;
  remember(run, list);
  return list;
}

}  // namespace strandline
