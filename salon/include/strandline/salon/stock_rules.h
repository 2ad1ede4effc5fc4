// When stock is low and how much to order: knowledge/policy/stock.json.
#pragma once

#include "strandline/wire/json.h"

namespace strandline::salon {

struct StockRules {  // days
  int window_days = 0, least_days = 0, low_days = 0, order_days = 0, expires_days = 0;
};

// Problems: missing_key {key}, out_of_range {value, min, max} with its place.
Result<StockRules> read_stock_rules(const wire::Json& json);

}  // namespace strandline::salon
