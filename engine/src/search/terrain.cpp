#include "search/terrain.h"

#include <algorithm>

#include "mix/habits.h"
#include "mix/pour.h"

namespace strandline {

double least_price(const Terrain& t, const Branch& b) {
  const Terrain::Poured& poured = t.poured[b.way];
  double sum = poured.developer_price;
  for (int i = 0; i < b.parts(); ++i) {
    const ShadeNode& node = t.ground->node(b, i);
    if (poured.part_g[i] > node.stock_high) return std::numeric_limits<double>::infinity();
    sum += Constants{}.price_money * poured.part_g[i] * node.price_low;
  }
  for (const Terrain::Zone& z : t.zones) sum += z.least();
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

SettingZone& SettingZones::made(int setting, int zone, double minutes) {
  auto& all = made_[static_cast<size_t>(setting) * zones_.size() + static_cast<size_t>(zone)];
  for (const auto& one : all)
    if (one->minutes == minutes) return *one;
  const SearchZone& z = zones_[static_cast<size_t>(zone)];
  auto own = std::make_unique<SettingZone>();
  own->minutes = minutes;
  own->table = zone_table(
      *z.draws,
      bare_chemistry(domain_.settings[static_cast<size_t>(setting)].setting, std::max(0.0, minutes + z.half_touch)),
      draws_);
  own->loss = &z.price;
  own->load_most = load_most_[static_cast<size_t>(setting)];
  all.push_back(std::move(own));
  return *all.back();
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

Terrain SettingZones::terrain(int setting, const std::vector<int>& zones,
                              const std::vector<std::vector<double>>& minutes, double grams) {
  const Setting& s = domain_.settings[static_cast<size_t>(setting)].setting;
  Terrain t;
  if (grams > 0) weigh(t, s, grams);
  t.ground = &ground(setting);
  t.ratio = s.ratio;
  t.setting = &s;
  int bits = 0;
  for (size_t i = 0; i < zones.size(); ++i) {
    const SearchZone& zone = zones_[static_cast<size_t>(zones[i])];
    Terrain::Zone& own = t.zones.emplace_back();
    own.share = zone.weight / total_weight_;
    own.loss = &zone.price;
    own.first_bit = bits;
    own.least_time = std::numeric_limits<double>::infinity();
    for (double m : minutes[i]) {
      SettingZone& made_here = made(setting, zones[i], m);
      own.times.push_back({&made_here, own.share * setting_price(s, zone, made_here.table.exposure)});
      own.least_time = std::min(own.least_time, own.times.back().price);
    }
    bits += static_cast<int>(own.times.size());
  }
  return t;
}

namespace {

template <class Table, class Make>
void need(std::unique_ptr<Table> SettingZone::* which, const std::vector<SettingZone*>& all,
          const ParallelFor& parallel, const Make& make) {
  std::vector<SettingZone*> missing;
  for (SettingZone* one : all)
    if (auto& table = one->*which; !table) {
      table = std::make_unique<Table>();
      missing.push_back(one);
    }
  parallel(static_cast<int>(missing.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) {
      SettingZone& own = *missing[static_cast<size_t>(i)];
      *(own.*which) = make(own.table, *own.loss, own.load_most);
    }
  });
}

}  // namespace

void need_boxes(const std::vector<SettingZone*>& all, const ParallelFor& parallel) {
  need(&SettingZone::box, all, parallel, box_table);
}

void need_groups(const std::vector<SettingZone*>& all, const ParallelFor& parallel) {
  need(&SettingZone::groups, all, parallel, bound_table);
}

}  // namespace strandline
