#include "formulate/own.h"

#include <algorithm>
#include <cmath>

#include "formulate/judge.h"
#include "formulate/reasons.h"
#include "mix/habits.h"
#include "mix/pour.h"
#include "mix/within.h"

namespace strandline {
namespace {

constexpr double kEighth = 1.0 / 8;
constexpr size_t kPartsMost = 3;

Spectrum load(const Own& o) {
  Spectrum offer{};
  const double factor = dilution(*o.range, o.ratio);
  for (const auto& [product, share] : o.shares) {
    const Spectrum own = offered(*product, *o.range);
    for (int b = 0; b < kBands; ++b) offer[b] += factor * share * own[b];
  }
  return saturated(offer);
}

double correctors(const Own& o) {
  double sum = 0;
  for (const auto& [p, share] : o.shares)
    if (p->cls == ProductClass::corrector) sum += share;
  return sum;
}

double colours(const Own& o) {
  double sum = 0;
  for (const auto& [p, share] : o.shares)
    if (p->cls != ProductClass::corrector && p->cls != ProductClass::clear) sum += share;
  return sum;
}

void normalise(Own& o) {
  double sum = 0;
  for (const auto& [p, share] : o.shares) sum += share;
  for (auto& [p, share] : o.shares) share /= sum;
}

std::vector<double> other(const std::vector<double>& all, double now) {
  std::vector<double> rest;
  for (double v : all)
    if (std::abs(v - now) > 1e-6) rest.push_back(v);
  return rest;
}

// What goes into a bowl of the range.
std::vector<const Product*> tubes_of(const Range& range, const Shelf& shelf, const FormulaPolicy& policy) {
  std::vector<const Product*> all;
  for (const Product& p : shelf.products)
    if (p.range == range.id && has_colour(p) && p.stock_g >= policy.part_min_g && p.cls != ProductClass::filler)
      all.push_back(&p);
  return all;
}

std::string percent(double share) { return figure(100 * share, 0); }

}  // namespace

Own own(const Formula& f, const Shelf& shelf) {
  Own o;
  o.range = find_range(shelf, f.range);
  o.minutes = f.minutes;
  o.damp_hair = f.damp_hair;
  double colour = 0, developer = 0, peroxide = 0;
  for (const Part& part : f.parts) {
    const Product* p = find_product(shelf, part.product);
    if (!p || !(part.grams > 0)) continue;
    if (p->cls == ProductClass::developer)
      developer += part.grams, peroxide += part.grams * p->peroxide_percent;
    else
      colour += part.grams, o.shares.emplace_back(p, part.grams);
  }
  if (developer > 0) o.developer_percent = peroxide / developer;
  if (colour > 0) o.ratio = developer / colour;
  if (colour > 0) normalise(o);
  return o;
}

Formula pour(const Own& o, double total, const Shelf& shelf, const FormulaPolicy& policy) {
  auto rounded = [&](double g) { return weighed(g, policy); };
  Formula f;
  f.range = o.range->id;
  f.minutes = o.minutes;
  f.damp_hair = o.damp_hair;
  double poured = 0;
  for (const auto& [p, share] : o.shares) {
    f.parts.push_back({p->id, rounded(total / (1 + o.ratio) * share)});
    poured += f.parts.back().grams;
  }
  std::stable_sort(f.parts.begin(), f.parts.end(), [](const Part& a, const Part& b) { return a.grams > b.grams; });
  if (o.ratio > 0)
    for (const Part& p : bottles(shelf, o.developer_percent, rounded(poured * o.ratio), policy.gram_step))
      f.parts.push_back(p);
  return f;
}

Judge::Judge(const Situation& now, const std::vector<SearchZone>& zones, std::vector<int> served, double total_weight,
             const Shelf& shelf, const FormulaPolicy& policy, double grams, std::vector<double> longer)
    : now_(now),
      zones_(zones),
      served_(std::move(served)),
      total_weight_(total_weight),
      shelf_(shelf),
      policy_(policy),
      grams_(grams),
      longer_(std::move(longer)) {}

double Judge::objective(const Own& o) {
  auto& tables = tables_[{o.range, o.developer_percent, o.ratio, o.minutes, o.damp_hair}];
  const Setting setting{o.range, o.developer_percent, o.ratio, o.minutes};
  if (tables.empty()) {
    BowlChemistry bare = bare_chemistry(setting, o.minutes);
    bare.damp_hair = o.damp_hair;
    for (size_t i = 0; i < served_.size(); ++i) {
      bare.minutes = std::max(0.0, o.minutes + longer_[i]);
      tables.push_back(zone_table(*zones_[static_cast<size_t>(served_[i])].draws, bare, now_.draws));
    }
  }
  const Spectrum exact = load(o);
  std::vector<float> single(exact.begin(), exact.end());
  double sum = Constants{}.price_money * cost(pour(o, grams_, shelf_, policy_), shelf_);
  for (size_t i = 0; i < served_.size(); ++i) {
    const SearchZone& zone = zones_[static_cast<size_t>(served_[i])];
    float loss = 0;
    mean_losses(tables[i], zone.price, single.data(), 1, &loss);
    sum += zone.weight / total_weight_ * (static_cast<double>(loss) + setting_price(setting, zone, tables[i].exposure));
  }
  return sum;
}

bool Judge::allowed(const Own& o) const {
  if (o.shares.empty() || !(colours(o) > 0) || correctors(o) > o.range->corrector_max_share + 1e-9) return false;
  if (o.developer_percent * o.ratio / (1 + o.ratio) > policy_.on_head_peroxide_max_percent + 1e-9) return false;
  if (o.developer_percent > 0 && bottles(shelf_, o.developer_percent, 100, policy_.gram_step).empty()) return false;
  if (!within_law_and_stock(pour(o, grams_, shelf_, policy_), shelf_)) return false;
  const Setting setting{o.range, o.developer_percent, o.ratio, o.minutes};
  if (!range_rules(setting, "").empty()) return false;
  return std::all_of(served_.begin(), served_.end(), [&](int z) {
    const SearchZone& zone = zones_[static_cast<size_t>(z)];
    return forbidden(setting, *zone.span, policy_).empty() && within_rules(setting, o.minutes, zone);
  });
}

std::vector<Edit> Judge::edits(const Edit& from) const {
  std::vector<Edit> all;
  auto add = [&](Own changed, Problem what) {
    if (!allowed(changed)) return;
    Edit e{std::move(changed), from.changes};
    e.changes.push_back(std::move(what));
    all.push_back(std::move(e));
  };
  const Own& o = from.own;
  for (double p : other(o.range->developer_percents, o.developer_percent)) {
    Own changed = o;
    changed.developer_percent = p;
    if (changed.ratio == 0) changed.ratio = reference(*o.range).ratio;
    add(changed, {"change_strength", "", {{"percent", figure(p)}}});
  }
  for (double r : other(o.range->ratios, o.ratio)) {
    Own changed = o;
    changed.ratio = r;
    if (o.developer_percent > 0) add(changed, {"change_ratio", "", {{"ratio", figure(r)}}});
  }
  for (double m : other(times(*o.range), o.minutes)) {
    Own changed = o;
    changed.minutes = m;
    add(changed, {"change_minutes", "", {{"minutes", figure(m, 0)}}});
  }
  const std::vector<const Product*> tubes = tubes_of(*o.range, shelf_, policy_);
  auto holds = [&](const Product* p) {
    return std::any_of(o.shares.begin(), o.shares.end(), [&](const auto& s) { return s.first->id == p->id; });
  };
  for (size_t i = 0; i < o.shares.size(); ++i) {
    for (const Product* p : tubes) {
      if (holds(p)) continue;
      Own changed = o;
      changed.shares[i].first = p;
      add(changed, {"swap_shade", "", {{"product", o.shares[i].first->name}, {"by", p->name}}});
    }
    if (o.shares.size() > 1) {
      Own changed = o;
      changed.shares.erase(changed.shares.begin() + static_cast<long>(i));
      normalise(changed);
      add(changed, {"drop_shade", "", {{"product", o.shares[i].first->name}}});
    }
    for (size_t j = 0; j < o.shares.size(); ++j)
      for (double by : {kEighth, 2 * kEighth}) {
        if (i == j || o.shares[j].second - by < kEighth / 2) continue;
        Own changed = o;
        changed.shares[i].second += by;
        changed.shares[j].second -= by;
        add(changed, {"shift_shares",
                      "",
                      {{"product", o.shares[i].first->name},
                       {"share", percent(changed.shares[i].second)},
                       {"by", by > kEighth ? "2" : "1"}}});
      }
  }
  if (o.shares.size() < kPartsMost)
    for (const Product* p : tubes) {
      if (holds(p)) continue;
      for (double share : {kEighth, 2 * kEighth, 4 * kEighth}) {
        Own changed = o;
        for (auto& s : changed.shares) s.second *= 1 - share;
        changed.shares.emplace_back(p, share);
        add(changed, {"add_shade", "", {{"product", p->name}, {"share", percent(share)}}});
      }
    }
  return all;
}

namespace {

// The process brought within its range: ratio and strength that were not to their nearest, time to its target.
Edit within_range(const Own& o) {
  Edit e{o, {}};
  auto nearest = [](const std::vector<double>& all, double v) {
    return *std::min_element(all.begin(), all.end(),
                             [&](double a, double b) { return std::abs(a - v) < std::abs(b - v); });
  };
  auto mend = [&](double Own::* value, double to, const char* code, const char* key, int decimals) {
    Own changed = e.own;
    changed.*value = to;
    const auto broken = [](const Own& own) {
      return range_rules({own.range, own.developer_percent, own.ratio, own.minutes}, "").size();
    };
    if (broken(changed) >= broken(e.own)) return;
    e.own = changed;
    e.changes.push_back({code, "", {{key, figure(to, decimals)}}});
  };
  if (!o.range->ratios.empty()) mend(&Own::ratio, nearest(o.range->ratios, o.ratio), "change_ratio", "ratio", 1);
  if (!o.range->developer_percents.empty())
    mend(&Own::developer_percent, nearest(o.range->developer_percents, o.developer_percent), "change_strength",
         "percent", 1);
  mend(&Own::minutes, o.range->minutes.target, "change_minutes", "minutes", 0);
  return e;
}

// How much a colourist has to do otherwise, by choice: shares first, the process next, tubes last.
int size_of(const Reasons& changes) {
  int sum = 0;
  for (const Problem& c : changes) {
    if (c.code == "shift_shares")
      sum += c.params.at("by") == "1" ? 1 : 2;
    else if (c.code == "change_ratio" || c.code == "change_strength" || c.code == "change_minutes")
      sum += 3;
    else
      sum += c.code == "drop_shade" ? 4 : 5;
  }
  return sum;
}

}  // namespace

std::optional<Edit> smallest_change(Judge& judge, const Own& as_mixed, double wanted,
                                    const std::function<bool()>& cancelled) {
  auto judged = [&](std::vector<Edit> edits) {
    for (Edit& e : edits) e.objective = judge.objective(e.own);
    std::stable_sort(edits.begin(), edits.end(),
                     [](const Edit& a, const Edit& b) { return a.objective < b.objective; });
    return edits;
  };
  // Of those that are fine the smallest, of equal ones the best.
  auto smallest = [&](const std::vector<Edit>& edits) -> const Edit* {
    const Edit* least = nullptr;
    for (const Edit& e : edits)
      if (e.objective <= wanted && (!least || size_of(e.changes) < size_of(least->changes))) least = &e;
    return least;
  };
  Edit start = within_range(as_mixed);
  if (!start.changes.empty() && judge.allowed(start.own) && (start.objective = judge.objective(start.own)) <= wanted)
    return start;
  const std::vector<Edit> one = judged(judge.edits(start));
  if (one.empty()) return std::nullopt;
  if (const Edit* least = smallest(one)) return *least;
  // From the most promising single changes on.
  constexpr size_t kBeam = 16;
  std::optional<Edit> best;
  for (size_t i = 0; i < std::min(kBeam, one.size()) && !cancelled(); ++i) {
    const std::vector<Edit> all = judged(judge.edits(one[i]));
    const Edit* two = smallest(all);
    if (two && (!best || size_of(two->changes) < size_of(best->changes))) best = *two;
  }
  return best;
}

}  // namespace strandline
