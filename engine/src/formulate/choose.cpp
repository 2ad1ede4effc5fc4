#include "formulate/choose.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "formulate/partition.h"

namespace strandline {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

std::vector<int> zones_of(const std::vector<ZoneGroup>& groups, int mask) {
  std::vector<int> all;
  for (size_t g = 0; g < groups.size(); ++g)
    if (mask >> g & 1) all.insert(all.end(), groups[g].zones.begin(), groups[g].zones.end());
  return all;
}

// Tables are costly and shared by all candidates of a setting: one per (setting, zone).
class Tables {
 public:
  explicit Tables(const ChoiceInput& in) : in_(in) {}
  const ZoneTable& at(int setting, int zone) {
    auto [it, fresh] = made_.try_emplace({setting, zone});
    if (fresh)
      it->second = zone_table(*in_.zones[static_cast<size_t>(zone)].draws,
                              bare_chemistry(in_.domain.settings[static_cast<size_t>(setting)].setting), in_.draws);
    return it->second;
  }

 private:
  const ChoiceInput& in_;
  std::map<std::pair<int, int>, ZoneTable> made_;
};

double objective(const ChoiceInput& in, Tables& tables, const Candidate& c, const std::vector<int>& zones) {
  const Domain::OneSetting& one = in.domain.settings[static_cast<size_t>(c.setting)];
  const RecipeSet& set = in.domain.sets[static_cast<size_t>(c.set)];
  const Spectrum load = set.load(c.shares, one.setting.ratio);
  const Constants k;
  double sum = 0;
  for (int z : zones) {
    const SearchZone& zone = in.zones[static_cast<size_t>(z)];
    const ZoneTable& table = tables.at(c.setting, z);
    sum +=
        zone.weight / in.total_weight * (exact_mean_loss(table, zone.price, load) + k.price_exposure * table.exposure);
  }
  return sum;
}

Formula poured(const ChoiceInput& in, const Candidate& c, const std::vector<int>& zones) {
  std::vector<std::string> names;
  for (int z : zones) names.push_back(in.zones[static_cast<size_t>(z)].draws->id);
  const Domain::OneSetting& one = in.domain.settings[static_cast<size_t>(c.setting)];
  return pour(in.domain.sets[static_cast<size_t>(c.set)], c.shares, one.setting, mix_grams(in.head, names, in.policy),
              in.shelf, in.policy);
}

bool within_law_and_stock(const ChoiceInput& in, const Formula& f, ProductClass cls) {
  for (const Part& part : f.parts) {
    const Product* p = find_product(in.shelf, part.product);
    if (!p || p->stock_g < part.grams) return false;
  }
  const auto report = law::check_limits(composition(f, in.shelf), use_of(cls));
  return report && report->overall != law::Status::over && report->overall != law::Status::not_permitted_use;
}

// The kept candidates of one set of groups, exact and allowed, best first. Ties within 1e-6 go by setting and shares.
std::vector<Candidate> exact(const ChoiceInput& in, Tables& tables, std::vector<Candidate> kept,
                             const std::vector<int>& zones) {
  std::vector<Candidate> all;
  for (Candidate& c : kept) {
    const Setting& setting = in.domain.settings[static_cast<size_t>(c.setting)].setting;
    const Formula f = poured(in, c, zones);
    if (!within_law_and_stock(in, f, setting.range->cls)) continue;
    c.objective = objective(in, tables, c, zones) + Constants{}.price_money * cost(f, in.shelf);
    all.push_back(c);
  }
  auto key = [](const Candidate& c) {
    return std::make_tuple(std::floor(1e6 * c.objective + 0.5), c.setting, c.shares.product[0], c.shares.product[1],
                           c.shares.product[2], c.shares.eighths[0], c.shares.eighths[1]);
  };
  std::sort(all.begin(), all.end(), [&](const Candidate& a, const Candidate& b) { return key(a) < key(b); });
  return all;
}

bool same_products(const Candidate& a, const Candidate& b) {
  return a.set == b.set &&
         std::equal(std::begin(a.shares.product), std::end(a.shares.product), std::begin(b.shares.product));
}

struct Kind {
  std::vector<ZoneGroup> groups;
  std::vector<std::vector<Candidate>> exact;  // per mask
  std::vector<Cover> covers;                  // per number of bowls
};

Kind solve(const ChoiceInput& in, Tables& tables, std::vector<ZoneGroup> groups, const Enumeration& found) {
  Kind kind;
  kind.groups = std::move(groups);
  const size_t masks = found.best.size();
  kind.exact.resize(masks);
  std::vector<double> best(masks, kNever), leave;
  for (size_t mask = 1; mask < masks; ++mask) {
    kind.exact[mask] = exact(in, tables, found.best[mask], zones_of(kind.groups, static_cast<int>(mask)));
    if (!kind.exact[mask].empty()) best[mask] = kind.exact[mask][0].objective;
  }
  for (const ZoneGroup& g : kind.groups) {
    double sum = 0;
    for (int z : g.zones)
      sum += in.zones[static_cast<size_t>(z)].weight / in.total_weight * in.zones[static_cast<size_t>(z)].leave_loss;
    leave.push_back(sum);
  }
  kind.covers = covers(best, leave, in.policy.bowls_max, Constants{}.price_bowl);
  return kind;
}

void take(const Kind& kind, const Cover& cover, std::vector<Chosen>& bowls) {
  for (int mask : cover.masks) {
    Chosen c;
    c.zones = zones_of(kind.groups, mask);
    const auto& list = kind.exact[static_cast<size_t>(mask)];
    c.best = list[0];
    for (const Candidate& other : list)
      if (!same_products(other, c.best)) {
        c.runner_up = other;
        c.has_runner_up = true;
        break;
      }
    bowls.push_back(std::move(c));
  }
}

}  // namespace

double exact_objective(const ChoiceInput& in, const Candidate& candidate, const std::vector<int>& zones) {
  Tables tables(in);
  return objective(in, tables, candidate, zones);
}

Choice choose(const ChoiceInput& in, const std::vector<ZoneGroup>& groups, const std::vector<Enumeration>& by_kind) {
  Tables tables(in);
  std::vector<Kind> kinds;
  for (size_t k = 0; k < by_kind.size(); ++k) {
    std::vector<ZoneGroup> own;
    for (const ZoneGroup& g : groups)
      if (g.at_scalp == (k == 0)) own.push_back(g);
    kinds.push_back(solve(in, tables, std::move(own), by_kind[k]));
  }
  const size_t most = static_cast<size_t>(in.policy.bowls_max);
  std::vector<double> by_count(most + 1, kNever);
  std::vector<std::pair<size_t, size_t>> split(most + 1);
  for (size_t i = 0; i <= most; ++i)
    for (size_t j = 0; i + j <= most; ++j) {
      const double cost = kinds[0].covers[i].cost + kinds[1].covers[j].cost;
      if (cost < by_count[i + j]) by_count[i + j] = cost, split[i + j] = {i, j};
    }
  const size_t count = static_cast<size_t>(std::min_element(by_count.begin(), by_count.end()) - by_count.begin());
  Choice choice;
  choice.objective = by_count[count];
  if (count > 0 && by_count[count - 1] < kNever) choice.fewer_objective = by_count[count - 1], choice.has_fewer = true;
  take(kinds[0], kinds[0].covers[split[count].first], choice.bowls);
  take(kinds[1], kinds[1].covers[split[count].second], choice.bowls);
  return choice;
}

}  // namespace strandline
