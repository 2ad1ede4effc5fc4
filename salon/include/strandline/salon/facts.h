// Facts of visits: told as they happen, and all that is left of a visit once it is handed in.
#pragma once

#include "strandline/salon/clients.h"
#include "strandline/salon/stock.h"
#include "strandline/salon/visits.h"
#include "strandline/wire/happened.h"

namespace strandline::salon {

struct ToldFact {
  std::int64_t store_seq = 0;
  std::string id, visit_id;
  std::int64_t seq = 0;  // within its visit
  std::string made_at, kind;
  int version = 1;
  std::string person;   // whose visit it is; empty = nobody's
  std::string by;       // who told it; empty where nobody signed in
  bool erased = false;  // its key was destroyed: there is no body any more
  wire::Json body;
};

struct FactsPage {
  std::vector<ToldFact> facts;
  std::string next;  // "" = this is the last page
};

// `told` is {"id", "kind", "version"?, "made_at"?, "body"}: the id is the device's, so that what is handed in again
// changes nothing; made_at (UTC, 2026-03-09T09:00:00Z) is when it happened, absent = now. Sealed with the key of the
// person whose visit it is, else of the visit. Problems: those of wire::check_happened · visit_not_found {id} ·
// visit_handed_in {at} (what it tells had to come before) · fact_version {kind, version} · bad_instant {text} · those
// of visits.h.
Result<ToldFact> tell(World& world, const std::string& visit_id, const wire::Json& told, const std::string& by = {});
// Of one visit, in order. Problems visit_not_found {id}, bad_request {what}.
Result<FactsPage> facts_of(World& world, const std::string& visit_id, const std::string& cursor = {}, int limit = 200);

// Turns the draft into facts and forgets it, or does nothing. `asked` is {"entry", "seq", "person"?, "facts"?}: entry
// is the device's id for this, seq the newest save that it has seen, person whose visit it is ("new" = somebody who is
// not known yet; absent = as the draft says, else by the client's name), facts as tell() takes them. Handed in again
// under the same entry it is answered as the first time. What was mixed leaves `stock` in the same moment. Problems:
// those of tell() · visit_handed_in {at} · client_same_name {name, ids} (a person decides whether it is one of them) ·
// client_not_found {id} · redo_unknown {id}.
Result<SavedVisit> hand_in(World& world, Clients& clients, const std::string& visit_id, const wire::Json& asked,
                           const std::string& by = {}, Stock* stock = nullptr);

}  // namespace strandline::salon
