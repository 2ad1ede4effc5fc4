// Visits as the salon keeps them: opened, saved, listed. A saved visit is a draft in the store; it must have the right
// shape (wire), but may still be unfinished: what a plan needs is checked when one is asked for. Once handed in
// (facts.h) it is a fact and changes no more.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "strandline/salon/world.h"
#include "strandline/wire/document.h"

namespace strandline::salon {

struct VisitSummary {
  std::string id;
  std::int64_t seq = 0;
  std::string client, date, opened_at, changed_at;
  std::string person;        // whose visit it is; empty = nobody's yet
  std::string handed_in_at;  // empty = it is still a draft
};

struct VisitsAsked {
  std::string cursor;  // `next` of the page before; "" = the first page
  std::string find;    // part of a client's name; capitals and accents do not matter
  std::string client;  // the whole of it, likewise
  int limit = 100;     // 1 … 500
};

struct VisitsPage {
  std::vector<VisitSummary> visits;  // newest change first
  std::string next;                  // "" = this is the last page
};

struct SavedVisit {
  VisitSummary summary;
  std::string entry;  // the id of the save that the document is
  wire::Json document;
};

struct Change {
  std::int64_t store_seq = 0;
  std::string visit_id;
  std::int64_t seq = 0;
  std::string made_at, kind;
};

// Problems of all: store_unavailable {detail}. Of single ones: visit_not_found {id} · visit_changed_elsewhere
// {seq} · visit_handed_in {at} · visit_erased {id} · entry_id_taken {id} · not_an_id {id} · bad_request {what}.
Result<VisitsPage> list_visits(World& world, const VisitsAsked& asked = {});
// A draft, or what was handed in.
Result<SavedVisit> open_saved(World& world, const std::string& id);
// `entry` is the id that the writer gives to what it saves, 16 to 80 letters, digits, - and _; "" = one is made here.
// Handed in again, it changes nothing and is answered as the first time, whatever came after it. The answer is the
// entry saved, not the newest. A new visit bears the id of its first entry; `person` is whose it is, where that is
// known.
Result<SavedVisit> save_new(World& world, const wire::Json& document, const wire::Sources& sources,
                            const std::string& entry = {}, const std::string& person = {});
// `seen_seq` is the newest entry that the writer has seen; nothing is written when there is a newer one.
Result<SavedVisit> save_change(World& world, const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                               const wire::Sources& sources, const std::string& entry = {});
Result<std::vector<Change>> changes(World& world, std::int64_t after);

// The demo salon: one visit for every document in `folder`, in order of their names, with fixed ids and
// times. Everybody in it is invented.
Result<int> open_demo_salon(World& world, const std::filesystem::path& folder, const wire::Sources& sources);

}  // namespace strandline::salon
