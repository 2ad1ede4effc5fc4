#include "drafts.h"

#include "journal.h"
#include "strandline/store/plain.h"

namespace strandline::store {

namespace {

constexpr std::string_view columns =
    "d.visit_id, d.store_seq, d.seq, d.save_id, d.opened_at, d.changed_at, d.person, d.label, keys.wrapped";
constexpr std::string_view from = " FROM drafts AS d LEFT JOIN keys ON keys.owner = d.visit_id ";

Trouble damaged(const VisitRow& row) { return {"store_damaged", "visit " + row.visit_id, row.store_seq}; }

VisitRow row_of(const Row& r) {
  VisitRow out;
  out.visit_id = r.text(0), out.store_seq = r.integer(1), out.seq = r.integer(2), out.entry_id = r.text(3);
  out.opened_at = r.text(4), out.changed_at = r.text(5), out.person = r.text(6);
  return out;
}

// What a box lies beside: it opens for this save of this visit only.
std::string place(std::string_view what, const VisitRow& row) {
  return beside({what, row.visit_id, std::to_string(row.store_seq), std::to_string(row.seq), row.entry_id,
                 row.opened_at, row.changed_at});
}

// Name and date, as one text to seal.
std::string label_of(const VisitRow& row) { return filled(beside({row.date, row.client})); }

bool read_label(std::string label, VisitRow& row) {
  const auto text = unfilled(std::move(label));
  std::vector<std::string> fields;
  for (std::size_t at = 0; text && at < text->size();) {
    std::size_t length = 0;
    for (; at < text->size() && (*text)[at] != ':'; ++at)
      length = length * 10 + static_cast<std::size_t>((*text)[at] - '0');
    fields.push_back(text->substr(std::min(++at, text->size()), length));
    at += length;
  }
  if (fields.size() != 2) return false;
  row.date = fields[0], row.client = fields[1];
  return true;
}

// With name and date; false where the label does not open.
bool open_label(const Keys& keys, const Row& r, VisitRow& row) {
  const auto key = keys.unwrapped(row.visit_id, r.blob(8));
  auto label = key ? key->open(r.blob(7), place("label", row)) : std::nullopt;
  return label && read_label(std::move(*label), row);
}

bool readable(const VisitRow& row) {
  return is_utf8(row.visit_id + row.entry_id + row.opened_at + row.changed_at + row.person + row.client + row.date);
}

Save save_of(const Row& r) { return {r.integer(0), r.text(1), r.text(2), r.integer(3), r.text(4)}; }

}  // namespace

Expected<Save> save_draft(Connection& db, const Keys& keys, const NewDraft& asked) {
  const auto key = keys.made_for(db, asked.visit_id);
  if (!key) return tl::unexpected(key.error());
  std::optional<Save> known;
  std::string digest;
  const auto looked = db.run("SELECT store_seq, id, visit_id, seq, made_at, digest FROM saves WHERE id = $id",
                             {{"$id", asked.id}}, [&](const Row& r) { known = save_of(r), digest = r.blob(5); });
  if (!looked) return tl::unexpected(looked.error());
  if (known) {
    // Handed in twice: the same save is the answer, another one under its id is a conflict.
    if (known->visit_id == asked.visit_id && digest == key->digest(asked.body)) return *known;
    return tl::unexpected(Trouble{"store_id_taken", asked.id, known->seq});
  }
  VisitRow row;
  row.visit_id = asked.visit_id, row.entry_id = asked.id, row.changed_at = row.opened_at = asked.made_at;
  row.person = asked.person;
  auto read = db.run("SELECT seq, opened_at, person FROM drafts WHERE visit_id = $visit", {{"$visit", asked.visit_id}},
                     [&](const Row& r) {
                       row.seq = r.integer(0), row.opened_at = r.text(1);
                       if (row.person.empty()) row.person = r.text(2);
                     });
  if (!read) return tl::unexpected(read.error());
  if (row.seq != asked.after_seq) return tl::unexpected(Trouble{"store_conflict", "changed meanwhile", row.seq});
  ++row.seq;
  if (auto json = expect_json(db, asked.body); !json) return tl::unexpected(json.error());
  read = db.run("SELECT coalesce(json_extract($body, '$.client'), ''), coalesce(json_extract($body, '$.date'), '')",
                {{"$body", asked.body}}, [&](const Row& r) { row.client = r.text(0), row.date = r.text(1); });
  if (!read) return tl::unexpected(read.error());
  read = db.run("INSERT INTO saves (id, visit_id, seq, made_at, digest) VALUES ($id, $visit, $seq, $made_at, $digest)",
                {{"$id", asked.id},
                 {"$visit", asked.visit_id},
                 {"$seq", row.seq},
                 {"$made_at", asked.made_at},
                 {"$digest", Value::blob(key->digest(asked.body))}});
  if (!read) return tl::unexpected(read.error());
  read = db.run("SELECT store_seq FROM saves WHERE id = $id", {{"$id", asked.id}},
                [&](const Row& r) { row.store_seq = r.integer(0); });
  if (!read) return tl::unexpected(read.error());
  read = db.run("DELETE FROM drafts WHERE visit_id = $visit", {{"$visit", row.visit_id}});
  if (!read) return tl::unexpected(read.error());
  read = db.run(
      "INSERT INTO drafts VALUES ($visit, $store_seq, $seq, $save, $opened_at, $changed_at, $person, $label, $body)",
      {{"$visit", row.visit_id},
       {"$store_seq", row.store_seq},
       {"$seq", row.seq},
       {"$save", row.entry_id},
       {"$opened_at", row.opened_at},
       {"$changed_at", row.changed_at},
       {"$person", row.person},
       {"$label", Value::blob(key->seal(label_of(row), place("label", row)))},
       {"$body", Value::blob(key->seal(filled(asked.body), place("body", row)))}});
  if (!read) return tl::unexpected(read.error());
  return Save{row.store_seq, row.entry_id, row.visit_id, row.seq, row.changed_at};
}

Expected<void> forget_draft(Connection& db, const std::string& visit_id, std::int64_t seen) {
  std::int64_t newest = 0;
  const auto read = db.run("SELECT seq FROM drafts WHERE visit_id = $visit", {{"$visit", visit_id}},
                           [&](const Row& r) { newest = r.integer(0); });
  if (!read) return read;
  if (newest != seen) return tl::unexpected(Trouble{"store_conflict", "changed meanwhile", newest});
  for (const char* sql : {"DELETE FROM drafts WHERE visit_id = $visit", "DELETE FROM saves WHERE visit_id = $visit",
                          "DELETE FROM keys WHERE owner = $visit AND length(wrapped) > 0 AND NOT EXISTS (SELECT 1 FROM "
                          "facts WHERE key = $visit)"}) {
    if (auto gone = db.run(sql, {{"$visit", visit_id}}); !gone) return gone;
  }
  return {};
}

Expected<std::optional<VisitRow>> read_draft(Connection& db, const Keys& keys, const std::string& visit_id) {
  std::optional<VisitRow> out;
  bool whole = true;
  const auto read =
      db.run("SELECT " + std::string(columns) + ", d.body" + std::string(from) + "WHERE d.visit_id = $visit",
             {{"$visit", visit_id}}, [&](const Row& r) {
               out = row_of(r);
               const auto key = keys.unwrapped(visit_id, r.blob(8));
               auto body = key ? key->open(r.blob(9), place("body", *out)) : std::nullopt;
               auto text = body ? unfilled(std::move(*body)) : std::nullopt;
               whole = text && open_label(keys, r, *out) && readable(*out);
               if (text) out->body = std::move(*text);
             });
  if (!read) return tl::unexpected(read.error());
  if (!whole) return tl::unexpected(damaged(*out));
  return out;
}

Expected<std::vector<VisitRow>> read_labels(Connection& db, const Keys& keys) {
  std::vector<VisitRow> out;
  std::optional<Trouble> bad;
  const auto read =
      db.run("SELECT " + std::string(columns) + std::string(from) + "ORDER BY d.store_seq", {}, [&](const Row& r) {
        VisitRow row = row_of(r);
        if (!open_label(keys, r, row) || !readable(row)) bad = damaged(row);
        out.push_back(std::move(row));
      });
  if (!read) return tl::unexpected(read.error());
  if (bad) return tl::unexpected(*bad);
  return out;
}

Expected<std::vector<Save>> read_saves(Connection& db, std::int64_t after, int limit) {
  std::vector<Save> out;
  const auto read = db.run(
      "SELECT store_seq, id, visit_id, seq, made_at FROM saves WHERE store_seq > $after ORDER BY store_seq LIMIT "
      "$limit",
      {{"$after", after}, {"$limit", std::int64_t{limit}}}, [&](const Row& r) { out.push_back(save_of(r)); });
  if (!read) return tl::unexpected(read.error());
  for (const Save& s : out) {
    if (!is_utf8(s.id + s.visit_id + s.made_at))
      return tl::unexpected(Trouble{"store_damaged", "save " + std::to_string(s.store_seq), s.store_seq});
  }
  return out;
}

Expected<void> check_drafts(Connection& db, const Keys& keys) {
  if (auto known = keys.check(db); !known) return known;
  std::vector<std::string> visits;
  std::string astray;
  auto read = db.run("SELECT visit_id FROM drafts", {}, [&](const Row& r) { visits.push_back(r.text(0)); });
  if (!read) return read;
  read = db.run(
      "SELECT s.visit_id FROM saves AS s LEFT JOIN drafts AS d ON d.visit_id = s.visit_id GROUP BY s.visit_id, "
      "d.seq, d.store_seq HAVING max(s.seq) <> d.seq OR max(s.store_seq) <> d.store_seq OR d.seq IS NULL",
      {}, [&](const Row& r) { astray = r.text(0); });
  if (!read) return read;
  if (!astray.empty()) return tl::unexpected(Trouble{"store_damaged", "visit " + astray, 0});
  for (const std::string& id : visits) {
    if (const auto one = read_draft(db, keys, id); !one) return tl::unexpected(one.error());
  }
  return {};
}

}  // namespace strandline::store
