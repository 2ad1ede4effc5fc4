#include "move_entries.h"

#include "checks.h"
#include "drafts.h"
#include "journal.h"

namespace strandline::store {

namespace {

// The head of `entries`, as read_head() tells it while there are no facts.
Expected<Head> head_of_entries(Connection& db) {
  Head out;
  const auto read = db.run("SELECT store_seq, lower(hex(hash)) FROM entries ORDER BY store_seq DESC LIMIT 1", {},
                           [&out](const Row& row) { out = {row.integer(0), row.text(1)}; });
  if (!read) return tl::unexpected(read.error());
  return out;
}

}  // namespace

Expected<void> move_entries(Connection& db, const Keys& keys, bool as_found) {
  const auto broken = check_entries(db);
  if (!broken) return tl::unexpected(broken.error());
  if (*broken && !as_found)
    return tl::unexpected(Trouble{"store_damaged", "entry " + std::to_string(**broken), **broken});
  const auto head = head_of_entries(db);
  if (!head) return tl::unexpected(head.error());
  // Every save as it came, so that their order and the cursor of changes stay; the drafts end as the newest.
  std::vector<std::int64_t> order;
  auto read = db.run("SELECT store_seq FROM entries ORDER BY store_seq", {},
                     [&](const Row& r) { order.push_back(r.integer(0)); });
  if (!read) return read;
  std::string newest_at;
  for (const std::int64_t store_seq : order) {
    NewDraft draft;
    read = db.run("SELECT id, visit_id, seq, made_at, body FROM entries WHERE store_seq = $seq", {{"$seq", store_seq}},
                  [&](const Row& r) { draft = {r.text(0), r.text(1), r.integer(2) - 1, r.text(3), r.text(4), ""}; });
    if (!read) return read;
    newest_at = draft.made_at;
    if (const auto kept = save_draft(db, keys, draft); !kept) return tl::unexpected(kept.error());
  }
  if (head->store_seq > 0) {
    const NewFact moved{
        .id = "moved-" + head->hash.substr(0, 16),
        .stream = "salon",
        .after_seq = 0,
        .made_at = newest_at,
        .kind = "moved",
        .body = "{}",
        .key = {},
        .about = "{\"entries\":" + std::to_string(head->store_seq) + ",\"hash\":\"" + head->hash + "\"}"};
    if (const auto kept = append_fact(db, keys, moved); !kept) return tl::unexpected(kept.error());
  }
  return db.script("DROP TABLE visits; DROP TABLE entries");
}

}  // namespace strandline::store
