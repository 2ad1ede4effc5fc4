// What stands on a shelf, what is low, what is due, what to order.
#include <algorithm>
#include <cmath>

#include "civil.h"
#include "members.h"
#include "strandline/salon/stock.h"

namespace strandline::salon {

namespace {

using wire::Json, wire::Moved, wire::StockIs, wire::StockItem;

// Grams a day of each product, used or thrown away, over the window of the rules.
std::map<std::string, double> pace(const Ledger& ledger, int today, const StockRules& rules) {
  std::map<std::string, Milligrams> gone;
  std::map<std::string, int> first;
  const auto& moves = ledger.moves();
  for (auto m = moves.rbegin(); m != moves.rend(); ++m) {
    const int day = day_of(m->at).value_or(today);
    if (today - day >= rules.window_days) break;
    if ((m->wish.what != Moved::use && m->wish.what != Moved::waste) || ledger.undone(m->id)) continue;
    gone[m->wish.product] += milligrams(m->wish.grams);
    first[m->wish.product] = day;
  }
  std::map<std::string, double> out;
  for (const auto& [product, mg] : gone) {
    const int days = std::clamp(today - first[product] + 1, rules.least_days, rules.window_days);
    if (mg > 0) out[product] = grams(mg) / days;
  }
  return out;
}

void judge(StockItem& item, const Balance& balance, const StockRules& rules) {
  item.short_g = balance.counted() ? grams(balance.short_mg) : 0;
  if (!balance.counted()) return;
  item.grams = grams(balance.mg());
  if (item.daily_g > 0) item.days_left = item.grams / item.daily_g;
  const bool low = item.days_left && *item.days_left < rules.low_days;
  item.is = item.short_g > 0  ? StockIs::short_of
            : item.grams == 0 ? StockIs::none
            : low             ? StockIs::low
                              : StockIs::enough;
  if (item.is == StockIs::enough) return;
  const double wanted = item.daily_g * rules.order_days - item.grams;
  if (wanted <= 0) return;
  const double package = item.package_g.value_or(0);
  item.order_g = package > 0 ? std::ceil(wanted / package) * package : std::ceil(wanted);
}

}  // namespace

Result<wire::StockView> Stock::view(const std::string& shelf) {
  const auto there = shelves_.open_shelf(shelf);
  if (!there) return tl::unexpected(there.error());
  const std::lock_guard lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  const Ledger& ledger = ledgers_[there->summary.id];
  wire::StockView out;
  out.shelf = there->summary.id, out.title = there->summary.title;
  out.currency = text_at(there->document, "currency");
  if (out.currency.empty()) out.currency = "EUR";
  constexpr std::size_t date = 10;
  out.today = world_.now().substr(0, date);
  const int today = day_of(out.today).value_or(0);
  const auto daily = pace(ledger, today, rules_);
  std::map<std::string, std::string> ranges;
  for (const Json& r : there->document["ranges"])
    ranges[text_at(r, "id")] = text_at(r, "name").empty() ? text_at(r, "id") : text_at(r, "name");

  const auto add = [&](StockItem item) {
    const Balance& balance = ledger.of(item.product);
    if (const auto found = daily.find(item.product); found != daily.end()) item.daily_g = found->second;
    item.seen = balance.seen, item.counted_at = balance.counted_at;
    for (const Lot& lot : balance.lots) {
      if (lot.mg == 0) continue;
      const auto due = day_of(lot.expires);
      item.batches.push_back({lot.batch, lot.expires, grams(lot.mg), due && *due < today,
                              due && *due >= today && *due - today <= rules_.expires_days, lot.cost_per_g});
    }
    std::stable_sort(item.batches.begin(), item.batches.end(), [](const auto& a, const auto& b) {
      if (a.expires.empty() != b.expires.empty()) return b.expires.empty();
      return a.expires < b.expires;
    });
    judge(item, balance, rules_);
    out.items.push_back(std::move(item));
  };
  std::set<std::string> listed;
  for (const Json& p : there->document["products"]) {
    StockItem item;
    item.product = text_at(p, "id"), item.code = text_at(p, "code"), item.barcode = text_at(p, "barcode");
    item.name = text_at(p, "name").empty() ? item.product : text_at(p, "name");
    item.range = text_at(p, "range"), item.cls = text_at(p, "cls");
    if (const auto found = ranges.find(item.range); found != ranges.end()) item.range_name = found->second;
    item.package_g = number_at(p, "package_g"), item.price_per_g = number_at(p, "price_per_g");
    listed.insert(item.product);
    add(std::move(item));
  }
  for (const auto& [product, balance] : ledger.balances()) {
    if (listed.contains(product) || balance.mg() == 0) continue;
    StockItem item;
    item.product = item.name = product;
    add(std::move(item));
  }
  return out;
}

Result<wire::StockReport> Stock::report(const std::string& shelf, const std::vector<EndedVisit>& visits,
                                        const std::string& from, const std::string& until) {
  const auto there = shelves_.open_shelf(shelf);
  if (!there) return tl::unexpected(there.error());
  constexpr int usual_days = 84;
  ReportAsked asked;
  asked.shelf = there->summary.id, asked.currency = text_at(there->document, "currency");
  if (asked.currency.empty()) asked.currency = "EUR";
  asked.until = day_of(world_.now()).value_or(0);
  for (const auto& [text, day] : {std::pair{&until, &asked.until}, {&from, &asked.from}}) {
    if (day == &asked.from) asked.from = asked.until - usual_days + 1;
    if (text->empty()) continue;
    const auto read = day_of(*text);
    if (!read) return tl::unexpected(Problems{{"bad_date", "", {{"text", *text}}}});
    *day = *read;
  }
  for (const Json& p : there->document["products"]) {
    const std::string id = text_at(p, "id"), code = text_at(p, "code"), name = text_at(p, "name");
    if (const auto price = number_at(p, "price_per_g")) asked.listed[id] = *price;
    asked.names[id] = code.empty() ? (name.empty() ? id : name) : code + (name.empty() ? "" : " · " + name);
  }
  for (const Json& r : there->document["ranges"])
    asked.range_names[text_at(r, "id")] = text_at(r, "name").empty() ? text_at(r, "id") : text_at(r, "name");
  const std::lock_guard lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  return stock_report(ledgers_[asked.shelf], visits, asked);
}

}  // namespace strandline::salon
