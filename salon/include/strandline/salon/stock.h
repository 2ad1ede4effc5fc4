// Stock of the salon's shelves: every movement a fact of the shelf's own stream, in its ledger (ledger.h), which is
// read again at a start. What is mixed at a visit is booked by itself.
#pragma once

#include <mutex>
#include <utility>

#include "strandline/salon/ledger.h"
#include "strandline/salon/report.h"
#include "strandline/salon/shelves.h"
#include "strandline/wire/stock_view.h"

namespace strandline::salon {

// Facts of one visit's bowls, planned and in the ledger, but kept only if somebody says so before this is gone.
class Booking {
 public:
  Booking() = default;
  Booking(std::unique_lock<std::mutex> lock, Ledger& ledger, Ledger::Mark mark)
      : lock_(std::move(lock)), ledger_(&ledger), mark_(std::move(mark)) {}
  Booking(Booking&& other) noexcept
      : lock_(std::move(other.lock_)),
        ledger_(std::exchange(other.ledger_, nullptr)),
        mark_(std::move(other.mark_)),
        facts_(std::move(other.facts_)) {}
  Booking& operator=(Booking&& other) noexcept {
    std::swap(lock_, other.lock_), std::swap(ledger_, other.ledger_);
    std::swap(mark_, other.mark_), std::swap(facts_, other.facts_);
    return *this;
  }
  ~Booking() {
    if (ledger_) ledger_->back_to(mark_);
  }

  const std::vector<store::NewFact>& facts() const { return facts_; }
  void books(std::vector<store::NewFact> facts) { facts_ = std::move(facts); }
  void kept() { ledger_ = nullptr; }

 private:
  std::unique_lock<std::mutex> lock_;  // of the ledgers: the order of the facts is that of the ledger
  Ledger* ledger_ = nullptr;
  Ledger::Mark mark_;
  std::vector<store::NewFact> facts_;
};

// Safe from many threads at once. World, shelves and rules must outlive it.
class Stock {
 public:
  Stock(World& world, Shelves& shelves, const StockRules& rules) : world_(world), shelves_(shelves), rules_(rules) {}

  // What stands on a shelf, by product: those of its newest version, and others that something is left of. Problem
  // shelf_not_found {id}.
  Result<wire::StockView> view(const std::string& shelf);

  // All of `asked` {"moves": [StockWish …]} or nothing of it. `entry` as for visits: handed in again it changes nothing
  // and is answered as the first time. Problems with their places: those of Ledger::planned() · unknown_product
  // {product} · reason_missing · what_happens_at_a_bowl (use is booked by visits) · those of decode.
  Result<std::vector<wire::StockMove>> move(const std::string& shelf, const wire::Json& asked,
                                            const std::string& entry = {}, const std::string& by = {});

  struct Page {
    std::vector<wire::StockMove> moves;
    std::set<std::string> undone;  // ids of those among them that were
    std::string next;              // "" = this is the last page
  };
  // Newest first; "" = any product, any visit. Problem bad_request {what}.
  Result<Page> moves(const std::string& shelf, const std::string& product = {}, const std::string& visit = {},
                     const std::string& cursor = {}, int limit = 100);

  // Oldest first.
  Result<std::vector<wire::StockMove>> all(const std::string& shelf);

  // Books what a visit's document says was weighed, as the difference to what is booked for it already: said twice it
  // is booked once. `mixed` = bodies of the facts that tell what was mixed; absent = what was weighed until now.
  // Nothing is booked for a shelf that is written out in the document.
  Result<void> book(const std::string& visit_id, const wire::Json& document, const std::string& by = {});
  Result<Booking> booking(const std::string& visit_id, const wire::Json& document,
                          const std::optional<std::vector<wire::Json>>& mixed, const std::string& by);

  // Of the days from `from` to `until` (civil dates; "" = twelve weeks until today). Problems shelf_not_found {id},
  // bad_date {text}.
  Result<wire::StockReport> report(const std::string& shelf, const std::vector<EndedVisit>& visits,
                                   const std::string& from = {}, const std::string& until = {});

  // Grams that are left of a product; nothing where nobody counted it.
  std::optional<double> left(const std::string& shelf, const std::string& product);

 private:
  Result<void> ready();
  store::NewFact fact_of(const std::string& shelf, const wire::StockMove& move) const;

  World& world_;
  Shelves& shelves_;
  const StockRules& rules_;
  std::mutex mutex_;
  bool read_ = false;
  std::map<std::string, Ledger> ledgers_;  // by shelf
};

}  // namespace strandline::salon
