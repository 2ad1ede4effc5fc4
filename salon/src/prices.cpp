#include "strandline/salon/prices.h"

#include <algorithm>
#include <cmath>

#include "of_store.h"

namespace strandline::salon {

namespace {

constexpr const char *kPrices = "prices.set", *kStream = "prices";
constexpr double kMinutesPerHour = 60;

double up_to(double price, double step) {
  constexpr double hair = 1e-9;  // what a sum of decimals is off by
  return step > 0 ? std::ceil(price / step - hair) * step : std::round(price * 100) / 100;
}

}  // namespace

wire::Price price_of(const wire::PriceRules& rules, const wire::PriceAsked& asked) {
  wire::Price out;
  if (asked.redo) {
    out.why = "redo";
    return out;
  }
  const double by_time = rules.per_hour * asked.minutes / kMinutesPerHour;
  double work = 0;
  switch (rules.by) {
    case wire::PriceBy::time:
      work = by_time, out.why = "time";
      break;
    case wire::PriceBy::result:
      work = rules.per_level * asked.levels, out.why = "result";
      break;
    case wire::PriceBy::cls:
      out.why = "cls";
      for (const wire::ClassPrice& one : rules.classes)
        if (std::find(asked.classes.begin(), asked.classes.end(), one.cls) != asked.classes.end()) work += one.price;
      break;
  }
  if (rules.correction_levels > 0 && asked.levels >= rules.correction_levels && by_time > work)
    work = by_time, out.why = "correction";
  const double sum = rules.base + work + rules.products_times * asked.cost;
  out.from = up_to(sum, rules.round_to);
  out.to = up_to(sum * (1 + rules.spread_share), rules.round_to);
  return out;
}

Result<std::optional<wire::PriceRules>> prices(World& world) {
  std::optional<wire::PriceRules> out;
  constexpr int page = 200;
  for (std::int64_t after = 0;;) {
    store::FactsAsked asked;
    asked.after = after, asked.kind = kPrices, asked.limit = page;
    const auto facts = world.store->facts(asked);
    if (!facts) return problem_of(facts.error());
    for (const store::Fact& fact : *facts) {
      auto read = wire::parse(fact.body).and_then(wire::read_price_rules);
      if (!read) return problem_of({"store_damaged", "fact " + std::to_string(fact.store_seq), fact.store_seq});
      out = std::move(*read), after = fact.store_seq;
    }
    if (facts->size() < static_cast<std::size_t>(page)) return out;
  }
}

Result<wire::PriceRules> set_prices(World& world, const wire::Json& asked, const std::string& by) {
  auto rules = wire::read_price_rules(asked);
  if (!rules) return rules;
  const bool none =
      rules->base == 0 && rules->per_hour == 0 && rules->per_level == 0 && rules->products_times == 0 &&
      std::all_of(rules->classes.begin(), rules->classes.end(), [](const auto& c) { return c.price == 0; });
  if (none) return tl::unexpected(Problems{{"no_price", "", {}}});
  store::NewFact fact;
  fact.id = world.new_id(), fact.stream = kStream, fact.after_seq = store::NewFact::at_the_end;
  fact.made_at = world.now(), fact.kind = kPrices, fact.body = wire::print(wire::prices_json(*rules));
  if (!by.empty()) fact.about = wire::print({{"by", by}});
  if (const auto kept = world.store->append(fact); !kept) return problem_of(kept.error());
  return rules;
}

}  // namespace strandline::salon
