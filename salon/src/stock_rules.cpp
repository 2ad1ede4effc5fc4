#include "strandline/salon/stock_rules.h"

#include "figures.h"

namespace strandline::salon {

Result<StockRules> read_stock_rules(const wire::Json& json) {
  auto read = Figures::read(json);
  if (!read) return tl::unexpected(read.error());
  StockRules out;
  constexpr int least = 1, most = 400;  // days: more than a year is a slip
  read->take("window_days", out.window_days, least, most);
  read->take("least_days", out.least_days, least, most);
  read->take("low_days", out.low_days, least, most);
  read->take("order_days", out.order_days, least, most);
  read->take("expires_days", out.expires_days, least, most);
  if (!read->problems().empty()) return tl::unexpected(read->problems());
  return out;
}

}  // namespace strandline::salon
