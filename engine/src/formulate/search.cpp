#include "formulate/search.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "formulate/habits.h"

namespace strandline {
namespace {

constexpr int kBlock = 256;      // recipes bounded or evaluated together
constexpr double kUnit = 2048;   // bounds are kept in 1/2048 level, rounded down
constexpr double kMost = 65535;  // in units: 32 levels

}  // namespace

struct BowlSearch::Pair {
  ZoneTable table;
  std::vector<std::uint16_t> bounds;  // per recipe of the set
};

struct BowlSearch::Set {
  std::vector<float> mixing;         // per recipe, rounded down
  std::vector<signed char> natural;  // eighths of natural shade
};

struct BowlSearch::Open {
  double bound = 0;
  int setting = 0, recipe = 0;
};

BowlSearch::BowlSearch(const Domain& domain, const std::vector<SearchZone>& zones, const Draws& draws,
                       double total_weight, const FormulaPolicy& policy, const FormulateOptions& options)
    : domain_(domain),
      zones_(zones),
      draws_(draws),
      total_weight_(total_weight),
      policy_(policy),
      options_(options),
      pairs_(domain.settings.size() * zones.size()),
      loads_(domain.settings.size()) {
  for (const RecipeSet& set : domain.sets) {
    Set s;
    for (const Shares& shares : set.shares()) {
      s.mixing.push_back(std::nextafter(static_cast<float>(mixing_price(set, shares)), 0.0F));
      s.natural.push_back(static_cast<signed char>(std::lround(set.natural_share(shares) * kEighths)));
    }
    sets_.push_back(std::move(s));
  }
}

BowlSearch::~BowlSearch() = default;

BowlSearch::Pair& BowlSearch::pair(int setting, int zone) {
  auto& p = pairs_[static_cast<size_t>(setting) * zones_.size() + static_cast<size_t>(zone)];
  if (!p) {
    p = std::make_unique<Pair>();
    p->table = zone_table(*zones_[static_cast<size_t>(zone)].draws,
                          bare_chemistry(domain_.settings[static_cast<size_t>(setting)].setting), draws_);
  }
  return *p;
}

const ZoneTable& BowlSearch::table(int setting, int zone) { return pair(setting, zone).table; }

bool BowlSearch::may_serve(int setting, int zone) const {
  const SearchZone& z = zones_[static_cast<size_t>(zone)];
  const Setting& s = domain_.settings[static_cast<size_t>(setting)].setting;
  return forbidden(s, *z.span, policy_).empty() && !out_of_place(s, z);
}

// The same loads serve every strength of a range.
const std::vector<float>& BowlSearch::loads(int setting) {
  const Domain::OneSetting& one = domain_.settings[static_cast<size_t>(setting)];
  int first = 0;
  while (domain_.settings[static_cast<size_t>(first)].set != one.set ||
         domain_.settings[static_cast<size_t>(first)].setting.ratio != one.setting.ratio)
    ++first;
  std::vector<float>& all = loads_[static_cast<size_t>(first)];
  if (all.empty()) {
    const RecipeSet& set = domain_.sets[static_cast<size_t>(one.set)];
    all.resize(set.shares().size() * kBands);
    for (size_t i = 0; i < set.shares().size(); ++i) {
      const Spectrum load = set.load(set.shares()[i], one.setting.ratio);
      for (size_t b = 0; b < kBands; ++b) all[i * kBands + b] = static_cast<float>(load[b]);
    }
  }
  return all;
}

// Bounds of every recipe under these settings on these zones, where they are not known yet.
void BowlSearch::prepare(const std::vector<int>& settings, const std::vector<int>& zones) {
  struct Task {
    int setting, zone;
  };
  std::vector<Task> tasks;
  for (int setting : settings)
    for (int zone : zones) {
      const auto& known = pairs_[static_cast<size_t>(setting) * zones_.size() + static_cast<size_t>(zone)];
      if ((known && !known->bounds.empty()) || options_.cancelled()) continue;
      loads(setting);
      tasks.push_back({setting, zone});
    }
  options_.parallel(static_cast<int>(tasks.size()), [&](int begin, int end) {
    for (int t = begin; t < end && !options_.cancelled(); ++t) {
      const auto [setting, zone] = tasks[static_cast<size_t>(t)];
      Pair& p = pair(setting, zone);
      const Domain::OneSetting& one = domain_.settings[static_cast<size_t>(setting)];
      const RecipeSet& set = domain_.sets[static_cast<size_t>(one.set)];
      constexpr double kSlack = 1.001;  // rounding to single precision
      const BoundTable bound = bound_table(p.table, static_cast<float>(kSlack * set.load_most(one.setting.ratio)));
      const std::vector<float>& all = loads(setting);
      const int count = static_cast<int>(set.shares().size());
      std::vector<std::uint16_t> found(static_cast<size_t>(count), 0);
      std::vector<float> block(kBlock);
      for (int i = 0; i < count && !options_.cancelled(); i += kBlock) {
        const int n = std::min(kBlock, count - i);
        lower_bounds(bound, zones_[static_cast<size_t>(zone)].price, &all[static_cast<size_t>(i) * kBands], n,
                     block.data());
        for (int j = 0; j < n; ++j)
          found[static_cast<size_t>(i + j)] =
              static_cast<std::uint16_t>(std::min(kMost, kUnit * static_cast<double>(block[static_cast<size_t>(j)])));
      }
      p.bounds = std::move(found);
    }
  });
}

// A bound on the objective of every recipe under one setting.
std::vector<double> BowlSearch::bounds(int setting, const Wish& wish) {
  const Domain::OneSetting& one = domain_.settings[static_cast<size_t>(setting)];
  const Set& set = sets_[static_cast<size_t>(one.set)];
  const size_t count = set.mixing.size();
  double natural[kEighths + 1] = {};
  for (int e = 0; e <= kEighths; ++e)
    for (int z : wish.zones) {
      const SearchZone& zone = zones_[static_cast<size_t>(z)];
      natural[e] += zone.weight / total_weight_ *
                    (setting_price(one.setting, zone, pair(setting, z).table.exposure) +
                     natural_share_price(zone, static_cast<double>(e) / kEighths, one.setting.range->cls));
    }
  std::vector<double> all(count);
  for (size_t i = 0; i < count; ++i)
    all[i] = natural[set.natural[i]] + (wish.mixing_price ? static_cast<double>(set.mixing[i]) : 0);
  for (int z : wish.zones) {
    const double share = zones_[static_cast<size_t>(z)].weight / total_weight_ / kUnit;
    const std::vector<std::uint16_t>& own = pair(setting, z).bounds;
    for (size_t i = 0; i < own.size(); ++i) all[i] += share * own[i];
  }
  return all;
}

// The objective in single precision.
double BowlSearch::evaluate(const Open& open, const Wish& wish) {
  const Domain::OneSetting& one = domain_.settings[static_cast<size_t>(open.setting)];
  const RecipeSet& set = domain_.sets[static_cast<size_t>(one.set)];
  const Shares& shares = set.shares()[static_cast<size_t>(open.recipe)];
  const float* load = &loads(open.setting)[static_cast<size_t>(open.recipe) * kBands];
  double sum = wish.mixing_price ? mixing_price(set, shares) : 0;
  for (int z : wish.zones) {
    const SearchZone& zone = zones_[static_cast<size_t>(z)];
    const ZoneTable& own = pair(open.setting, z).table;
    float loss = 0;
    mean_losses(own, zone.price, load, 1, &loss);
    sum += zone.weight / total_weight_ *
           (static_cast<double>(loss) + setting_price(one.setting, zone, own.exposure) +
            natural_share_price(zone, set.natural_share(shares), one.setting.range->cls));
  }
  return sum;
}

std::vector<Candidate> BowlSearch::best(const Wish& wish) {
  std::vector<int> settings;
  for (int i = 0; i < static_cast<int>(domain_.settings.size()); ++i)
    if (std::all_of(wish.zones.begin(), wish.zones.end(), [&](int z) { return may_serve(i, z); }))
      settings.push_back(i);
  prepare(settings, wish.zones);
  if (options_.cancelled()) {
    counts_.cancelled = true;
    return {};
  }

  // From the lowest bound on, in blocks, until no bound is below what was found. A few dozen first make the limit that
  // keeps the list of the rest short.
  BestFew best;
  std::vector<Open> open;
  auto evaluate_open = [&] {
    std::sort(open.begin(), open.end(), [](const Open& a, const Open& b) {
      return std::tie(a.bound, a.setting, a.recipe) < std::tie(b.bound, b.setting, b.recipe);
    });
    std::vector<double> values(kBlock);
    for (size_t begin = 0; begin < open.size() && open[begin].bound <= best.limit(); begin += kBlock) {
      if (options_.cancelled()) break;
      const int n = static_cast<int>(std::min<size_t>(kBlock, open.size() - begin));
      options_.parallel(n, [&](int first, int last) {
        for (int i = first; i < last; ++i)
          values[static_cast<size_t>(i)] = evaluate(open[begin + static_cast<size_t>(i)], wish);
      });
      for (int i = 0; i < n; ++i) {
        const Open& o = open[begin + static_cast<size_t>(i)];
        const int set = domain_.settings[static_cast<size_t>(o.setting)].set;
        best.offer({values[static_cast<size_t>(i)], set, o.setting,
                    domain_.sets[static_cast<size_t>(set)].shares()[static_cast<size_t>(o.recipe)]});
      }
      best.trim();
      counts_.evaluations += static_cast<long long>(n) * static_cast<long long>(wish.zones.size()) *
                             static_cast<long long>(draws_.constants.size());
    }
  };
  std::vector<std::vector<double>> bound(settings.size());
  options_.parallel(static_cast<int>(settings.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) bound[static_cast<size_t>(i)] = bounds(settings[static_cast<size_t>(i)], wish);
  });
  auto collect = [&](auto keep) {
    open.clear();
    for (size_t k = 0; k < settings.size(); ++k) {
      const int setting = settings[k], set = domain_.settings[static_cast<size_t>(setting)].set;
      const std::vector<Shares>& shares = domain_.sets[static_cast<size_t>(set)].shares();
      for (size_t i = 0; i < bound[k].size(); ++i) {
        const double least = bound[k][i];
        if (!keep(least)) continue;
        if (!wish.allowed || wish.allowed({least, set, setting, shares[i]}))
          open.push_back({least, setting, static_cast<int>(i)});
      }
    }
  };
  std::vector<double> lowest;  // a heap of the kBlock lowest bounds
  collect([&](double least) {
    if (lowest.size() == kBlock && least >= lowest.front()) return false;
    lowest.push_back(least);
    std::push_heap(lowest.begin(), lowest.end());
    if (lowest.size() > kBlock) std::pop_heap(lowest.begin(), lowest.end()), lowest.pop_back();
    return true;
  });
  evaluate_open();
  const double limit = best.limit();
  best = BestFew(limit);
  collect([&](double least) { return least <= limit; });
  evaluate_open();
  for (int setting : settings)
    counts_.recipes += static_cast<long long>(
        domain_.sets[static_cast<size_t>(domain_.settings[static_cast<size_t>(setting)].set)].shares().size());
  counts_.cancelled = counts_.cancelled || options_.cancelled();
  return best.take();
}

}  // namespace strandline
