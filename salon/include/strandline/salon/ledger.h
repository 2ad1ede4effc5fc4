// The ledger of one shelf: what came, went and was counted, by batch and expiry. Pure. Milligrams, so that sums are
// exact. What goes leaves the batch that is due first. No batch ever holds less than nothing: what went beyond what
// was there is told as short until somebody counts.
#pragma once

#include <map>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "strandline/result.h"
#include "strandline/wire/stock.h"

namespace strandline::salon {

using Milligrams = std::int64_t;
Milligrams milligrams(double grams);
double grams(Milligrams mg);

struct Lot {
  std::string batch, expires;  // expires: civil date; empty = not known, taken as the last to be due
  Milligrams mg = 0;
  int order = 0;                     // 0, 1, 2 … as they first came
  std::optional<double> cost_per_g;  // mean of what was paid for it
};

struct Balance {
  int vouched = 0;               // counts and receipts that were not undone; none = nobody knows how much is there
  Milligrams short_mg = 0;       // > 0 asks for a count
  std::vector<Lot> lots;         // in the order in which they came, emptied ones too
  long long seen = 0;            // movements of this product
  std::size_t counted_move = 0;  // the newest count's place + 1; 0 = none
  std::string counted_at;

  bool counted() const { return vouched > 0; }
  Milligrams mg() const;
};

// One product of one mix of one visit, as it is booked.
struct Booked {
  Milligrams use = 0, waste = 0;
  std::size_t newest = 0;  // place + 1
};
struct BookedFor {
  std::string visit, bowl, product;
  int mix = 1;
  auto operator<=>(const BookedFor&) const = default;
};

class Ledger {
 public:
  // What would be kept of a wish: checked against what is there, its lots chosen. Problems: grams_missing ·
  // more_than_there {grams} · not_counted {product} · count_unseen · moved_meanwhile {grams, seen} (of a count: what is
  // there now) · movement_not_found {id} · undone_already · counted_since {at} · undo_of_undo ·
  // booked_by_visit.
  Result<wire::StockMove> planned(wire::StockMove wish) const;
  // Takes one that is kept. `move` comes from planned() or from a fact.
  void take(wire::StockMove move);

  // Takes everything back that came after `mark()` was asked.
  struct Mark {
    std::size_t moves = 0;
    std::map<std::string, Balance> balances;
  };
  Mark mark(const std::set<std::string>& products) const;
  void back_to(const Mark& mark);

  const std::vector<wire::StockMove>& moves() const { return moves_; }
  const std::map<std::string, Balance>& balances() const { return balances_; }
  const Balance& of(const std::string& product) const;
  const wire::StockMove* find(const std::string& id) const;
  bool undone(const std::string& id) const { return undone_.contains(id); }
  // What is booked for one visit, by bowl, mix and product.
  std::map<BookedFor, Booked> booked(const std::string& visit) const;

 private:
  Result<wire::StockMove> outward(wire::StockMove move, bool may_be_short) const;
  Result<wire::StockMove> taken_back(wire::StockMove move) const;
  Result<wire::StockMove> counted(wire::StockMove move) const;
  Result<wire::StockMove> undo(wire::StockMove move) const;

  std::vector<wire::StockMove> moves_;
  std::map<std::string, Balance> balances_;
  std::unordered_map<std::string, std::size_t> ids_;
  std::unordered_map<std::string, std::vector<std::size_t>> visits_;
  std::set<std::string> undone_;
};

}  // namespace strandline::salon
