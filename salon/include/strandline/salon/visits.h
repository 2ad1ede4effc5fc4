// Visits as the salon keeps them: opened, saved, listed. A saved visit is a visit document in the journal; it
// must have the right shape (wire), but may still be unfinished: what a plan needs is checked when one is
// asked for.
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
};

struct SavedVisit {
  VisitSummary summary;
  wire::Json document;
};

struct Change {
  std::int64_t store_seq = 0;
  std::string visit_id;
  std::int64_t seq = 0;
  std::string made_at, kind;
};

// Problems of all: store_unavailable {detail}. Of single ones: visit_not_found {id} · visit_changed_elsewhere
// {seq}.
Result<std::vector<VisitSummary>> list_visits(World& world);
Result<SavedVisit> open_saved(World& world, const std::string& id);
Result<SavedVisit> save_new(World& world, const wire::Json& document, const wire::Sources& sources);
// `seen_seq` is the newest entry that the writer has seen; nothing is written when there is a newer one.
Result<SavedVisit> save_change(World& world, const std::string& id, std::int64_t seen_seq, const wire::Json& document,
                               const wire::Sources& sources);
Result<std::vector<Change>> changes(World& world, std::int64_t after);

// The demo salon: one visit for every document in `folder`, in order of their names, with fixed ids and
// times. Does nothing in a salon that has visits. Everybody in it is invented.
Result<int> open_demo_salon(World& world, const std::filesystem::path& folder, const wire::Sources& sources);

}  // namespace strandline::salon
