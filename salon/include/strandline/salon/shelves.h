// The shelves of a salon: its own, each saved as a fact with its whole document, and the demo shelf, which nobody
// edits.
//
// A document names a shelf "ID@HASH", the saved version with that content; "ID" is its newest, "" the one the salon
// works with, "demo" the invented one. A visit keeps the version that it was planned on. Whether a tube is empty is no
// part of a version: it is so today, whatever a visit was planned on.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <vector>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/world.h"
#include "strandline/wire/answer.h"
#include "strandline/wire/shelf_document.h"

namespace strandline::salon {

struct ShelfSummary {
  std::string id;
  std::int64_t seq = 0;  // of the newest version; 0 = the demo shelf
  std::string name;      // "ID@HASH", as a visit names it
  std::string title, saved_at;
  int ranges = 0, products = 0;
  bool invented = false;
  bool chosen = false;  // the one that new visits plan on
};

struct ShelfVersion {
  std::int64_t seq = 0;
  std::string name, saved_at;
  int ranges = 0, products = 0;
  // Of products, against the version before, by what they are called; at most kToldMost of each.
  std::vector<std::string> added, removed, changed;
};

struct SavedShelf {
  ShelfSummary summary;
  std::string entry;  // the id of the save that the document is
  wire::Json document;
  std::vector<std::string> empty;  // ids of products whose tubes are empty today
  Problems gaps;                   // what it still lacks before it can be mixed from
};

// Safe from many threads at once.
class Shelves {
 public:
  static constexpr std::size_t kToldMost = 20;

  // Reads nothing yet. Problems of all that does: store_unavailable {detail}, store_damaged {detail}. The house must
  // outlive it.
  Shelves(World world, const House& house) : world_(std::move(world)), house_(house) {}

  // Grams left of a product of a shelf, by their ids; nothing where nobody counted it. Asked without the lock of this
  // object. To be said before anything else is asked.
  using Left = std::function<std::optional<double>(const std::string& shelf, const std::string& product)>;
  void count_with(Left left) { left_ = std::move(left); }

  // Shelves by their names, policies of the house; as many grams of each product as are left today. Valid as long as
  // this object and the house.
  wire::Sources sources() const;
  // As a screen lists it. Problem shelf_not_found {id}.
  Result<wire::ShelfAnswer> view(const std::string& name) const;

  Result<std::vector<ShelfSummary>> list() const;
  // By name. The demo shelf too: to be copied. Problem shelf_not_found {id}.
  Result<SavedShelf> open_shelf(const std::string& name) const;
  // Newest version first.
  Result<std::vector<ShelfVersion>> history(const std::string& id) const;

  // Checks the whole document, then keeps it. `entry` as for visits: handed in again it changes nothing and is answered
  // as the first time. The id of a new shelf is `id`, or made here. Problems of the document with their places;
  // shelf_changed_elsewhere {seq} where there is a version that the writer has not seen; shelf_is_demo; not_an_id {id};
  // entry_id_taken {id}; shelf_id_taken {id}.
  Result<SavedShelf> save_new(const wire::Json& document, const std::string& entry = {}, const std::string& id = {});
  Result<SavedShelf> save_change(const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                                 const std::string& entry = {});
  // Takes a product out of every search, or puts it back. Problems shelf_is_demo, unknown_product {product}.
  Result<SavedShelf> set_empty(const std::string& id, const std::string& product, bool empty,
                               const std::string& entry = {});
  // New visits plan on it. Problem shelf_not_found {id}.
  Result<void> choose(const std::string& id);

 private:
  struct Version {
    std::int64_t seq = 0, store_seq = 0;
    std::string hash, entry, saved_at;
    int ranges = 0, products = 0;
  };
  struct Kept {
    std::string title;
    bool invented = false;
    std::vector<Version> versions;
    std::set<std::string> empty;
    std::int64_t tubes_seq = 0;  // store_seq of the newest fact that `empty` knows
  };
  struct Known {
    wire::ShelfDocument document;
    Shelf shelf;  // learned
  };

  struct Found {
    std::string id;
    const Version* version = nullptr;  // null = the demo shelf
  };
  // All of these require the lock.
  Result<void> ready() const;
  Result<void> take(const store::Fact& fact) const;
  Result<Found> find(const std::string& name) const;
  Result<wire::Json> document_of(const std::string& id, const Version& version) const;
  Result<std::shared_ptr<const Known>> known(const std::string& id, const Version& version) const;
  ShelfSummary summary_of(const std::string& id) const;
  Result<SavedShelf> answer(const std::string& id, const Version& version, wire::Json document) const;
  Result<SavedShelf> save(const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                          const std::string& entry);

  Result<wire::ShelfAnswer> view_of(const std::string& name, std::string& id) const;
  Result<Shelf> today(const std::string& name, std::string& id) const;

  World world_;
  const House& house_;
  Left left_;
  mutable std::mutex mutex_;
  mutable bool read_ = false;
  mutable std::map<std::string, Kept> shelves_;
  mutable std::string chosen_ = "demo";
  mutable std::map<std::string, std::shared_ptr<const Known>> cache_;  // by hash
};

}  // namespace strandline::salon
