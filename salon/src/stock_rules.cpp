#include "strandline/salon/stock_rules.h"

namespace strandline::salon {

Result<StockRules> read_stock_rules(const wire::Json& json) {
  StockRules out;
  Problems problems;
  const auto list = json.find("constants");
  const auto take = [&](const char* key, int& into) {
    constexpr int least = 1, most = 400;
    if (list != json.end() && list->is_array()) {
      for (const wire::Json& one : *list) {
        if (!one.is_object() || one.value("key", "") != key || !one.contains("value")) continue;
        const wire::Json& value = one["value"];
        if (value.is_number_integer() && value >= least && value <= most) {
          into = value.get<int>();
        } else {
          problems.push_back(
              {"out_of_range",
               std::string("/") + key,
               {{"value", wire::print(value)}, {"min", std::to_string(least)}, {"max", std::to_string(most)}}});
        }
        return;
      }
    }
    problems.push_back({"missing_key", "", {{"key", key}}});
  };
  take("window_days", out.window_days);
  take("least_days", out.least_days);
  take("low_days", out.low_days);
  take("order_days", out.order_days);
  take("expires_days", out.expires_days);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

}  // namespace strandline::salon
