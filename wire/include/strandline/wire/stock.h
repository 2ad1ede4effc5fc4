// What moves on a shelf, as a door tells it and as its fact holds it. Grams with three decimals.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/wire/json.h"

namespace strandline::wire {

enum class Moved { receive, use, waste, count, write_off, undo };

// What somebody says has happened.
struct StockWish {
  Moved what = Moved::receive;
  std::string product;
  double grams = 0;               // > 0; of a count what stands there now, ≥ 0; of an undo 0
  std::string batch, expires;     // as printed, and a civil date; empty = not known, or whichever is due first
  std::optional<double> paid;     // for all of it, in the currency of the shelf
  std::string reason;             // why it is written off
  std::string undoes;             // id of the movement that did not happen
  std::optional<long long> seen;  // of a count: how many movements of the product were known to who counted
};

// Grams of one batch: more than 0 came, less than 0 went.
struct StockLot {
  std::string batch, expires;
  double grams = 0;
};

// A movement as it is kept.
struct StockMove {
  StockWish wish;
  std::string visit, bowl;  // whose bowl it went into; empty = nobody's
  int mix = 0;
  std::vector<StockLot> lots;
  double short_g = 0;  // went, though nobody had counted it in; < 0 = settled by a count
  // Of its header, not of its body.
  std::string id, at, by;
  // Worked out from what was paid: > 0 what was used up.
  std::optional<double> cost;
};

// One movement as it is asked for. Problems as of decode().
Result<StockWish> read_stock_wish(const Json& asked, const std::string& path);
// The body of its fact, and back. Problem as of decode().
Json stock_body(const StockMove& move);
Result<StockMove> read_stock_body(const Json& body);
// As a door tells it.
Json stock_json(const StockMove& move);

}  // namespace strandline::wire
