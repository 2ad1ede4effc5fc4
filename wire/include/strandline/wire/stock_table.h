// Stock as CSV (RFC 4180), and a pasted list of what was received or counted.
#pragma once

#include "strandline/wire/stock_view.h"

namespace strandline::wire {

struct StockLine {
  int line = 0;      // 1, 2, 3 … of the text
  std::string text;  // its beginning
  std::optional<StockWish> move;
  Problems problems;  // why there is none
};

// Columns by their headings in four languages: product, code or barcode; grams or packages; batch, expires, paid. A
// count takes `seen` from the view. Problems of a line: unknown_product {product} · several_products {text} ·
// grams_missing · not_a_number_here {text, column} · thousands_or_not {text} · bad_date {text} · package_unknown ·
// line_twice {line}. Problems of the whole: document_too_large · too_many {max} · no_stock_heading.
Result<std::vector<StockLine>> read_stock_table(const std::string& text, Moved what, const StockView& view);

// {"text", "what"}, as a door asks for it, answered with its lines.
Result<Json> answer_stock_table(const Json& asked, const StockView& view);

std::string print_stock(const StockView& view);
std::string print_moves(const std::vector<StockMove>& moves);

}  // namespace strandline::wire
