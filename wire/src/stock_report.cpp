#include "strandline/wire/stock_report.h"

#include "strandline/wire/report_fields.h"

namespace strandline::wire {

namespace {

template <class T>
Result<T> read(const Json& in) {
  T out;
  Problems problems;
  decode(in, out, At(problems, ""));
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

}  // namespace

Json answer_json(const StockReport& report) { return with_schema(report); }
Json prices_json(const PriceRules& rules) { return encode(rules); }
Result<PriceRules> read_price_rules(const Json& json) { return read<PriceRules>(json); }
Result<PriceAsked> read_price_asked(const Json& json) { return read<PriceAsked>(json); }
Json price_json(const Price& price) { return with_schema(price); }

}  // namespace strandline::wire
