#include "formulate/search.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "formulate/habits.h"

namespace strandline {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

// The lowest bound first, then in a fixed order.
auto turn_of(const Branch& b) {
  return std::make_tuple(b.bound, b.setting, b.eighths[0], b.eighths[1], b.eighths[2], b.node[0], b.node[1], b.node[2]);
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
  explicit Run(const Wish& w) : wish(w), best(w.worth) {}
  const Wish& wish;
  std::map<int, Terrain> terrains;  // by setting
  std::vector<Branch> branches;     // heap: not divided yet
  std::vector<Branch> fresh;        // single recipes that only their box has bounded
  std::vector<Branch> singles;      // heap: recipes to evaluate
  BestFew best;
  int together = 4;  // branches divided in one round
};

BowlSearch::BowlSearch(const Domain& domain, const std::vector<SearchZone>& zones, const Draws& draws,
                       double total_weight, const FormulaPolicy& policy, const FormulateOptions& options)
    : domain_(domain),
      zones_(zones),
      draws_(draws),
      total_weight_(total_weight),
      policy_(policy),
      options_(options),
      made_(domain.settings.size() * zones.size()) {
  for (const RecipeSet& set : domain.sets) grounds_.push_back({&set, shade_tree(set)});
}

BowlSearch::~BowlSearch() = default;

SettingZone& BowlSearch::made(int setting, int zone) {
  auto& p = made_[static_cast<size_t>(setting) * zones_.size() + static_cast<size_t>(zone)];
  if (!p) {
    p = std::make_unique<SettingZone>();
    p->table = zone_table(*zones_[static_cast<size_t>(zone)].draws,
                          bare_chemistry(domain_.settings[static_cast<size_t>(setting)].setting), draws_);
  }
  return *p;
}

const ZoneTable& BowlSearch::table(int setting, int zone) { return made(setting, zone).table; }

bool BowlSearch::may_serve(int setting, int zone) const {
  const SearchZone& z = zones_[static_cast<size_t>(zone)];
  const Setting& s = domain_.settings[static_cast<size_t>(setting)].setting;
  return forbidden(s, *z.span, policy_).empty() && !out_of_place(s, z);
}

Terrain BowlSearch::terrain(int setting, const Wish& wish) const {
  const Domain::OneSetting& one = domain_.settings[static_cast<size_t>(setting)];
  Terrain t;
  t.ground = &grounds_[static_cast<size_t>(one.set)];
  t.ratio = one.setting.ratio;
  t.prices.mixing = wish.mixing_price;
  for (int z : wish.zones) {
    const SearchZone& zone = zones_[static_cast<size_t>(z)];
    const SettingZone& made = *made_[static_cast<size_t>(setting) * zones_.size() + static_cast<size_t>(z)];
    const double share = zone.weight / total_weight_;
    t.zones.push_back({share, &zone.price, &made});
    for (int e = 0; e <= kEighths; ++e)
      t.prices.natural[e] +=
          share * (setting_price(one.setting, zone, made.table.exposure) +
                   natural_share_price(zone, static_cast<double>(e) / kEighths, one.setting.range->cls));
  }
  return t;
}

// Every setting that may serve the zones waits undivided, at its price before any optics.
void BowlSearch::start(Run& run) {
  for (int i = 0; i < static_cast<int>(domain_.settings.size()); ++i) {
    if (!std::all_of(run.wish.zones.begin(), run.wish.zones.end(), [&](int z) { return may_serve(i, z); })) continue;
    for (int z : run.wish.zones) made(i, z);
    const Terrain& t = run.terrains.emplace(i, terrain(i, run.wish)).first->second;
    counts_.recipes += t.ground->set->size();
    for (Branch b : undivided(i)) {
      if (!holds_recipes(*t.ground, b)) continue;
      b.bound = least_price(*t.ground, b, t.prices);
      wait(run.branches, b);
    }
  }
}

// Divides the branches whose turn it is; false when none is left that matters. All of a round see the same limit, so
// that what is done does not depend on who does it.
bool BowlSearch::divide(Run& run) {
  const double limit = run.best.limit();
  std::vector<Branch> round;
  while (static_cast<int>(round.size()) < run.together && matters(run.branches, limit)) {
    const Branch b = take_first(run.branches);
    if (single(*run.terrains.at(b.setting).ground, b))
      run.fresh.push_back(b);
    else
      round.push_back(b);
  }
  if (round.empty()) return !run.fresh.empty();
  constexpr int kTogetherMost = 32;
  run.together = std::min(2 * run.together, kTogetherMost);

  struct Missing {
    SettingZone* zone;
    const ZoneLoss* loss;
    float most;
  };
  std::vector<Missing> missing;
  for (const Branch& b : round) {
    const Terrain& t = run.terrains.at(b.setting);
    constexpr double kSlack = 1.001;  // rounding to single precision
    const float most = static_cast<float>(kSlack * t.ground->set->load_most(t.ratio));
    for (int z : run.wish.zones) {
      SettingZone& m = made(b.setting, z);
      const auto known = [&](const Missing& other) { return other.zone == &m; };
      if (m.box.cells == 0 && std::none_of(missing.begin(), missing.end(), known))
        missing.push_back({&m, &zones_[static_cast<size_t>(z)].price, most});
    }
  }
  options_.parallel(static_cast<int>(missing.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) {
      const Missing& m = missing[static_cast<size_t>(i)];
      m.zone->box = box_table(m.zone->table, *m.loss, m.most);
    }
  });

  std::vector<Descent> done(round.size());
  options_.parallel(static_cast<int>(round.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) {
      const Branch& b = round[static_cast<size_t>(i)];
      done[static_cast<size_t>(i)] = descend(run.terrains.at(b.setting), b, limit, options_.cancelled);
    }
  });
  for (const Descent& d : done) {
    run.fresh.insert(run.fresh.end(), d.singles.begin(), d.singles.end());
    for (const Branch& b : d.left) wait(run.branches, b);
    counts_.boxes += d.boxes;
  }
  return true;
}

// The closer bound of every fresh recipe that is wanted at all.
void BowlSearch::bound_singles(Run& run) {
  if (run.wish.allowed)
    std::erase_if(run.fresh, [&](const Branch& b) { return !run.wish.allowed(candidate(b, b.bound)); });
  struct Missing {
    SettingZone* zone;
    const ZoneLoss* loss;
    float most;
  };
  std::vector<Missing> missing;
  for (const Branch& b : run.fresh)
    for (int z : run.wish.zones) {
      SettingZone& m = made(b.setting, z);
      if (m.groups) continue;
      m.groups = std::make_unique<BoundTable>();
      const Terrain& t = run.terrains.at(b.setting);
      missing.push_back(
          {&m, &zones_[static_cast<size_t>(z)].price, static_cast<float>(1.001 * t.ground->set->load_most(t.ratio))});
    }
  options_.parallel(static_cast<int>(missing.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) {
      const Missing& m = missing[static_cast<size_t>(i)];
      *m.zone->groups = bound_table(m.zone->table, *m.loss, m.most);
    }
  });
  const double limit = run.best.limit();
  options_.parallel(static_cast<int>(run.fresh.size()), [&](int begin, int end) {
    float load[kBands];
    for (int i = begin; i < end; ++i) {
      Branch& b = run.fresh[static_cast<size_t>(i)];
      const Terrain& t = run.terrains.at(b.setting);
      const Spectrum exact = t.ground->set->load(recipe_of(*t.ground, b), t.ratio);
      std::copy(exact.begin(), exact.end(), load);
      double sum = least_price(*t.ground, b, t.prices);
      for (size_t z = 0; z < t.zones.size() && sum <= limit; ++z) {
        float low = 0;
        const double enough = (limit - sum) / std::max(t.zones[z].share, 1e-9) + 1e-3;
        lower_bounds(*t.zones[z].made->groups, *t.zones[z].loss, load, 1, &low, static_cast<float>(enough));
        sum += t.zones[z].share * static_cast<double>(low);
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
double BowlSearch::evaluate(const Branch& b, const Wish& wish) const {
  const Domain::OneSetting& one = domain_.settings[static_cast<size_t>(b.setting)];
  const Ground& ground = grounds_[static_cast<size_t>(one.set)];
  const Shares shares = recipe_of(ground, b);
  const Spectrum exact = ground.set->load(shares, one.setting.ratio);
  float load[kBands];
  std::copy(exact.begin(), exact.end(), load);
  double sum = wish.mixing_price ? mixing_price(*ground.set, shares) : 0;
  for (int z : wish.zones) {
    const SearchZone& zone = zones_[static_cast<size_t>(z)];
    const ZoneTable& own = made_[static_cast<size_t>(b.setting) * zones_.size() + static_cast<size_t>(z)]->table;
    float loss = 0;
    mean_losses(own, zone.price, load, 1, &loss);
    sum += zone.weight / total_weight_ *
           (static_cast<double>(loss) + setting_price(one.setting, zone, own.exposure) +
            natural_share_price(zone, ground.set->natural_share(shares), one.setting.range->cls));
  }
  return sum;
}

Candidate BowlSearch::candidate(const Branch& b, double objective) const {
  const int set = domain_.settings[static_cast<size_t>(b.setting)].set;
  return {objective, set, b.setting, recipe_of(grounds_[static_cast<size_t>(set)], b)};
}

// Those of the lowest bounds, a block at a time, so that the limit falls early and little is evaluated in vain.
void BowlSearch::evaluate_some(Run& run) {
  constexpr int kBlock = 32;
  const bool last = !matters(run.branches, run.best.limit());
  do {
    std::vector<Branch> block;
    while (static_cast<int>(block.size()) < kBlock && matters(run.singles, run.best.limit()))
      block.push_back(take_first(run.singles));
    if (block.empty()) break;
    std::vector<double> values(block.size());
    options_.parallel(static_cast<int>(block.size()), [&](int begin, int end) {
      for (int i = begin; i < end; ++i)
        values[static_cast<size_t>(i)] = evaluate(block[static_cast<size_t>(i)], run.wish);
    });
    for (size_t i = 0; i < block.size(); ++i) run.best.offer(candidate(block[i], values[i]));
    run.best.trim();
    counts_.evaluations += static_cast<long long>(block.size() * run.wish.zones.size() * draws_.constants.size());
  } while (last && !options_.cancelled());
}

BowlList BowlSearch::find(const Wish& wish) {
  Run run(wish);
  BowlList list;
  start(run);
  bool more = true;
  while (more && !options_.cancelled()) {
    more = divide(run);
    if (options_.cancelled()) break;
    bound_singles(run);
    evaluate_some(run);
    more = more || matters(run.singles, run.best.limit());
  }
  // Stopped in the middle of a round, fresh recipes may be left too.
  double rest = std::min(lowest(run.branches), lowest(run.singles));
  for (const Branch& b : run.fresh) rest = std::min(rest, b.bound);
  list.complete = !more;
  list.candidates = run.best.take();
  list.bound = list.candidates.empty() ? wish.worth : list.candidates[0].objective - kRounding;
  if (!list.complete) list.bound = std::min(list.bound, rest);
  counts_.cancelled = counts_.cancelled || !list.complete;
  return list;
}

}  // namespace strandline
