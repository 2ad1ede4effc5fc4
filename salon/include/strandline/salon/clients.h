// Clients: those whose visits were handed in under a name, or who were brought along on a card or a list. Names lie
// sealed in the salon file and are searched in memory.
#pragma once

#include <mutex>
#include <unordered_map>

#include "strandline/salon/world.h"

namespace strandline::salon {

struct ClientLine {
  std::string id, name;
  int visits = 0;
  std::string last_visit;  // id of the newest that was handed in
  std::string last_date;   // civil date; empty where the visit has none
};

struct ClientVisit {
  std::string visit_id, date, handed_in_at;
};

// A card of paper, as it was copied.
struct ClientCard {
  std::string date, text, contact, kept_at;
};

struct NewClient {
  std::string id, name, date, text, contact;
};

struct AddedClients {
  int added = 0;
  int known = 0;  // left out: all that is said of them stands here already
};

struct ClientRecord {
  ClientLine client;
  std::vector<ClientCard> cards;    // newest first
  std::vector<ClientVisit> visits;  // newest first
};

// May be used from many threads. Problems of all: those of the store; bad_request {what}, client_not_found {id}.
class Clients {
 public:
  explicit Clients(World world) : world_(std::move(world)) {}

  // Those with `text` in their name, capitals and accents do not matter; whose visit is newest first.
  Result<std::vector<ClientLine>> find(const std::string& text, int limit = 50);
  // Those of exactly this name, likewise.
  Result<std::vector<ClientLine>> named(const std::string& name);
  Result<ClientRecord> open(const std::string& id);
  // All of them or none, each under the id that the device gave it: handed in again, nothing is told twice. Neither is
  // whoever has the same name and the same card, or the same name and no card at all, in a list that comes a second
  // time. Problems: too_many {max}, not_an_id {id}, left_empty {key}, entry_id_taken {id}.
  Result<AddedClients> add(const std::vector<NewClient>& list, const std::string& by = {});

  // The facts that make `visit_id` a visit of this client, to be handed in with it; `name` is that of somebody new, ""
  // = is known.
  static std::vector<store::NewFact> facts_for(const std::string& client, const std::string& name,
                                               const std::string& visit_id, const std::string& date,
                                               const std::string& made_at);

 private:
  Result<bool> stands_here(const NewClient& one);

  struct Known {
    ClientLine line;
    std::string plain;
    std::int64_t newest = 0;  // store_seq of the newest visit
  };
  // Takes in what was written since; under the lock.
  Result<void> catch_up();
  template <class Wanted>
  Result<std::vector<ClientLine>> those(int limit, Wanted&& wanted);

  World world_;
  std::mutex lock_;
  std::int64_t names_read_ = 0, visits_read_ = 0;  // store_seq
  std::vector<Known> known_;
  std::unordered_map<std::string, std::size_t> place_;
};

}  // namespace strandline::salon
