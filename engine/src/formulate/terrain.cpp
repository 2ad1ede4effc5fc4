#include "formulate/terrain.h"

#include <algorithm>

#include "formulate/habits.h"
#include "formulate/pour.h"

namespace strandline {

double least_price(const Terrain& t, const Branch& b) {
  const Terrain::Poured& poured = t.poured[b.way];
  double sum = (t.mixing ? least_mixing_price(*t.ground, b) : 0) + poured.developer_price;
  for (int i = 0; i < b.parts(); ++i) {
    const ShadeNode& node = t.ground->node(b, i);
    if (poured.part_g[i] > node.stock_high) return std::numeric_limits<double>::infinity();
    sum += Constants{}.price_money * poured.part_g[i] * node.price_low;
  }
  const int natural = most_natural(*t.ground, b);
  for (const Terrain::Zone& z : t.zones) sum += z.least(natural);
  return sum;
}

SettingZones::SettingZones(const Domain& domain, const std::vector<SearchZone>& zones, const Draws& draws,
                           double total_weight, const FormulaPolicy& policy)
    : domain_(domain),
      zones_(zones),
      draws_(draws),
      total_weight_(total_weight),
      policy_(policy),
      made_(domain.settings.size() * zones.size()) {
  for (const RecipeSet& set : domain.sets) grounds_.push_back({&set, shade_tree(set)});
  constexpr double kSlack = 1.001;  // rounding to single precision
  for (const Domain::OneSetting& one : domain.settings)
    load_most_.push_back(
        static_cast<float>(kSlack * domain.sets[static_cast<size_t>(one.set)].load_most(one.setting.ratio)));
}

const Ground& SettingZones::ground(int setting) const {
  return grounds_[static_cast<size_t>(domain_.settings[static_cast<size_t>(setting)].set)];
}

SettingZone& SettingZones::made(int setting, int zone) {
  auto& p = made_[static_cast<size_t>(setting) * zones_.size() + static_cast<size_t>(zone)];
  if (!p) {
    p = std::make_unique<SettingZone>();
    const Setting& s = domain_.settings[static_cast<size_t>(setting)].setting;
    const SearchZone& z = zones_[static_cast<size_t>(zone)];
    p->table = zone_table(*z.draws, bare_chemistry(s, s.minutes + z.half_touch), draws_);
  }
  return *p;
}

bool SettingZones::may_serve(int setting, const std::vector<int>& zones) const {
  const Setting& s = domain_.settings[static_cast<size_t>(setting)].setting;
  return std::all_of(zones.begin(), zones.end(), [&](int z) {
    const SearchZone& zone = zones_[static_cast<size_t>(z)];
    return forbidden(s, *zone.span, policy_).empty() && !out_of_place(s, zone);
  });
}

void SettingZones::weigh(Terrain& t, const Setting& s, double grams) const {
  for (const Branch& b : undivided(0)) {
    const PouredGrams w = poured_grams(b.eighths, s, grams, *domain_.shelf, policy_);
    Terrain::Poured& own = t.poured[b.way];
    std::copy(std::begin(w.part_g), std::end(w.part_g), own.part_g);
    for (const Part& part : w.developer) {
      const Product& p = *find_product(*domain_.shelf, part.product);
      own.developer_price += part.grams > p.stock_g ? std::numeric_limits<double>::infinity()
                                                    : Constants{}.price_money * part.grams * p.price_per_g;
    }
  }
}

Terrain SettingZones::terrain(int setting, const std::vector<int>& zones, double grams) {
  const Setting& s = domain_.settings[static_cast<size_t>(setting)].setting;
  Terrain t;
  if (grams > 0) weigh(t, s, grams);
  t.ground = &ground(setting);
  t.ratio = s.ratio;
  for (int z : zones) {
    const SearchZone& zone = zones_[static_cast<size_t>(z)];
    const SettingZone& m = made(setting, z);
    Terrain::Zone& own = t.zones.emplace_back();
    own.share = zone.weight / total_weight_;
    own.loss = &zone.price;
    own.made = &m;
    for (int e = 0; e <= kEighths; ++e)
      own.price[e] = own.share * (setting_price(s, zone, m.table.exposure) +
                                  natural_share_price(zone, static_cast<double>(e) / kEighths, s.range->cls));
  }
  return t;
}

template <class Table, class Make>
void SettingZones::need(std::unique_ptr<Table> SettingZone::* which, const std::vector<int>& settings,
                        const std::vector<int>& zones, const ParallelFor& parallel, const Make& make) {
  struct Missing {
    int setting, zone;
  };
  std::vector<Missing> missing;
  for (int s : settings)
    for (int z : zones)
      if (auto& table = made(s, z).*which; !table) {
        table = std::make_unique<Table>();
        missing.push_back({s, z});
      }
  parallel(static_cast<int>(missing.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) {
      const Missing& m = missing[static_cast<size_t>(i)];
      SettingZone& own = made(m.setting, m.zone);
      *(own.*which) =
          make(own.table, zones_[static_cast<size_t>(m.zone)].price, load_most_[static_cast<size_t>(m.setting)]);
    }
  });
}

void SettingZones::need_boxes(const std::vector<int>& settings, const std::vector<int>& zones,
                              const ParallelFor& parallel) {
  need(&SettingZone::box, settings, zones, parallel, box_table);
}

void SettingZones::need_groups(const std::vector<int>& settings, const std::vector<int>& zones,
                               const ParallelFor& parallel) {
  need(&SettingZone::groups, settings, zones, parallel, bound_table);
}

}  // namespace strandline
