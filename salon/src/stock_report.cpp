// What the movements and the handed-in visits of some weeks tell.
#include <algorithm>
#include <cmath>

#include "civil.h"
#include "strandline/salon/report.h"

namespace strandline::salon {

namespace {

using wire::Moved, wire::StockMove, wire::StockReport;

constexpr std::size_t kBowlsTold = 20;

// What was paid for what a movement took; what stands in the shelf's document where nobody said what was paid.
std::optional<double> cost_of(const StockMove& m, const std::map<std::string, double>& listed) {
  if (m.cost) return m.cost;
  const auto found = listed.find(m.wish.product);
  if (found == listed.end()) return std::nullopt;
  return m.wish.grams * found->second;
}

struct Sums {
  std::map<int, wire::ReportWeek> weeks;  // by day of their Monday
  std::map<std::string, wire::ReportPerson> people;
  std::map<std::string, std::set<std::string>> visits_of;
  std::map<std::pair<std::string, std::string>, wire::ReportBowl> bowls;
  std::unordered_map<std::string, wire::ReportProduct> products;
  std::unordered_map<std::string, double> visit_cost;
};

void outward(const StockMove& m, int day, const std::map<std::string, double>& listed, StockReport& out, Sums& sums) {
  wire::ReportProduct& product = sums.products[m.wish.product];
  const bool waste = m.wish.what == Moved::waste, off = m.wish.what == Moved::write_off;
  (waste ? out.waste_g : off ? out.written_off_g : out.use_g) += m.wish.grams;
  (waste ? product.waste_g : off ? product.written_off_g : product.use_g) += m.wish.grams;
  const auto cost = cost_of(m, listed);
  if (cost) {
    out.cost += *cost, product.cost += *cost;
  } else {
    out.no_cost_g += m.wish.grams;
  }
  constexpr int thursday = 3, days = 7;  // day 0 was a Thursday
  wire::ReportWeek& week = sums.weeks[day - (day + thursday) % days];
  if (!off) (waste ? week.waste_g : week.use_g) += m.wish.grams;
  week.cost += cost.value_or(0);
  if (m.visit.empty()) return;
  wire::ReportPerson& person = sums.people[m.by];
  wire::ReportBowl& bowl = sums.bowls[{m.visit, m.bowl}];
  (waste ? person.waste_g : person.use_g) += m.wish.grams;
  (waste ? bowl.waste_g : bowl.use_g) += m.wish.grams;
  if (bowl.at.empty()) bowl.visit = m.visit, bowl.bowl = m.bowl, bowl.at = m.at, sums.visits_of[m.by].insert(m.visit);
  sums.visit_cost[m.visit] += cost.value_or(0);
}

void add_up(const Ledger& ledger, const ReportAsked& asked, StockReport& out, Sums& sums) {
  for (const StockMove& m : ledger.moves()) {
    const int day = day_of(m.at).value_or(0);
    if (day < asked.from || day > asked.until || ledger.undone(m.id)) continue;
    switch (m.wish.what) {
      case Moved::receive:
        out.received_g += m.wish.grams, out.paid += m.wish.paid.value_or(0);
        sums.products[m.wish.product].received_g += m.wish.grams;
        if (m.wish.paid) out.prices.push_back({m.wish.product, m.at, *m.wish.paid / m.wish.grams});
        break;
      case Moved::use:
      case Moved::waste:
      case Moved::write_off:
        outward(m, day, asked.listed, out, sums);
        break;
      case Moved::count:
      case Moved::undo:
        break;
    }
  }
}

std::string civil(int day) {
  const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day}}};
  char text[32];
  std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                static_cast<unsigned>(date.day()));
  return text;
}

void of_visits(const std::vector<EndedVisit>& visits, const ReportAsked& asked, StockReport& out, const Sums& sums) {
  struct Off {
    int zones = 0, near = 0, tone = 0;
    double sum = 0, abs = 0;
  };
  std::map<std::string, Off> ranges;
  std::map<std::string, int> causes;
  for (const EndedVisit& v : visits) {
    const int day = day_of(v.at).value_or(0);
    if (day < asked.from || day > asked.until || v.shelf != out.shelf) continue;
    wire::ReportVisit told{v.id, v.at, v.by, v.planned_min, v.real_min, std::nullopt, 0};
    if (v.price_from && v.price_to) told.price = (*v.price_from + *v.price_to) / 2;
    if (!v.redo_of.empty()) told.price = 0, ++out.redone, ++causes[v.redo_cause];
    if (const auto cost = sums.visit_cost.find(v.id); cost != sums.visit_cost.end()) told.cost = cost->second;
    out.visits.push_back(std::move(told));
    for (const EndedZone& zone : v.zones) {
      const auto range = v.ranges.find(zone.zone);
      if (range == v.ranges.end()) continue;
      Off& off = ranges[range->second];
      constexpr double half = 0.5 + 1e-9;
      ++off.zones, off.sum += zone.off_levels, off.abs += std::abs(zone.off_levels);
      off.near += std::abs(zone.off_levels) <= half, off.tone += zone.same_tone;
    }
  }
  for (const auto& [range, off] : ranges) {
    const auto name = asked.range_names.find(range);
    out.ranges.push_back({range, name == asked.range_names.end() ? range : name->second, off.zones, off.sum / off.zones,
                          off.abs / off.zones, static_cast<double>(off.near) / off.zones,
                          static_cast<double>(off.tone) / off.zones});
  }
  for (const auto& [cause, n] : causes) out.causes.push_back({cause, n});
  std::stable_sort(out.causes.begin(), out.causes.end(),
                   [](const auto& a, const auto& b) { return a.visits > b.visits; });
}

}  // namespace

StockReport stock_report(const Ledger& ledger, const std::vector<EndedVisit>& visits, const ReportAsked& asked) {
  StockReport out;
  out.shelf = asked.shelf, out.currency = asked.currency;
  out.from = civil(asked.from), out.until = civil(asked.until);
  Sums sums;
  add_up(ledger, asked, out, sums);
  for (auto& [day, week] : sums.weeks) week.week = civil(day), out.weeks.push_back(week);
  for (auto& [by, person] : sums.people) {
    person.by = by, person.visits = static_cast<int>(sums.visits_of[by].size());
    const double mixed = person.use_g + person.waste_g;
    person.waste_share = mixed > 0 ? person.waste_g / mixed : 0;
    out.people.push_back(person);
  }
  for (auto& [key, bowl] : sums.bowls)
    if (bowl.waste_g > 0) out.bowls.push_back(std::move(bowl));
  std::sort(out.bowls.begin(), out.bowls.end(), [](const auto& a, const auto& b) {
    return a.waste_g != b.waste_g ? a.waste_g > b.waste_g : a.visit + a.bowl < b.visit + b.bowl;
  });
  if (out.bowls.size() > kBowlsTold) out.bowls.resize(kBowlsTold);
  for (auto& [id, product] : sums.products) {
    const auto name = asked.names.find(id);
    product.product = id, product.name = name == asked.names.end() ? id : name->second;
    out.products.push_back(std::move(product));
  }
  std::sort(out.products.begin(), out.products.end(), [](const auto& a, const auto& b) {
    return a.use_g != b.use_g ? a.use_g > b.use_g : a.product < b.product;
  });
  of_visits(visits, asked, out, sums);
  return out;
}

}  // namespace strandline::salon
