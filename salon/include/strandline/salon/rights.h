// What a person may ask of the salon: all that is kept of them, and that it is erased.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "strandline/salon/clients.h"
#include "strandline/wire/json.h"

namespace strandline::salon {

// Everything that is kept of a client, opened: {"schema", "client", "made_at", "facts", "drafts"}; facts of every visit
// of theirs, in order, each with its body. Problems: client_not_found {id}, those of the store.
Result<wire::Json> everything_of(World& world, Clients& clients, const std::string& client);

// The ids of visits that `everything` tells of.
std::vector<std::string> visits_in(const wire::Json& everything);

// Destroys their key and those of their visits, for good and in every older copy that is opened here, and forgets their
// name; that it was done, and by whom, stays as a fact without a name. Cut off, it can be asked again. Problems as
// above.
Result<void> erase_client(World& world, Clients& clients, const std::string& client, const std::string& by);

// How long the house keeps records: knowledge/policy/retention.json.
struct Retention {
  int client_years = 0;  // after the last visit
  int card_years = 0;    // after a card was copied whose client never came
};

// Problems: missing_key {key}, out_of_range {value, min, max} with its place.
Result<Retention> read_retention(const wire::Json& json);
// The same of the file in a folder of knowledge; problems also those of read_file().
Result<Retention> open_retention(const std::filesystem::path& knowledge);

// The ids of clients whom a house has kept for longer than that on this day ("2026-03-09").
Result<std::vector<std::string>> due_for_erasure(World& world, const Retention& rules, const std::string& day);

// The ids of those whose last visit was before that day ("2016-03-09"). Visits without a date are never before.
Result<std::vector<std::string>> last_seen_before(World& world, const std::string& day);

// The same day so many years ago: "2026-03-09" and 10 is "2016-03-09", 29 February is the 28th.
std::string years_before(const std::string& day, int years);

}  // namespace strandline::salon
