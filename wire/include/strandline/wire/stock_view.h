// What stands on a shelf in grams, as every door tells it.
#pragma once

#include "strandline/wire/stock.h"

namespace strandline::wire {

enum class StockIs { not_counted, enough, low, none, short_of };

struct StockBatch {
  std::string batch, expires;
  double grams = 0;
  bool expired = false, soon = false;
  std::optional<double> cost_per_g;
};

struct StockItem {
  std::string product, name, code, barcode, range, range_name, cls;
  std::optional<double> package_g, price_per_g;
  StockIs is = StockIs::not_counted;
  double grams = 0;    // 0 where nobody counted
  double short_g = 0;  // went, though nobody had counted it in
  std::vector<StockBatch> batches;
  long long seen = 0;  // to be told by who counts
  std::string counted_at;
  double daily_g = 0;               // used and thrown away
  std::optional<double> days_left;  // at that pace
  double order_g = 0;               // whole packages; 0 = none
};

struct StockView {
  std::string shelf, title, currency, today;
  std::vector<StockItem> items;
};

Json answer_json(const StockView& view);

}  // namespace strandline::wire
