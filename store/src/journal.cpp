#include "journal.h"

#include "chain.h"
#include "strandline/store/plain.h"

namespace strandline::store {

namespace {

constexpr std::string_view columns =
    "f.store_seq, f.id, f.stream, f.seq, f.made_at, f.kind, f.version, f.about, f.key, f.body, f.hash";

// As it is stored: the body still sealed.
Fact fact_of(const Row& r) {
  Fact out;
  out.store_seq = r.integer(0), out.id = r.text(1), out.stream = r.text(2), out.seq = r.integer(3);
  out.made_at = r.text(4), out.kind = r.text(5), out.version = static_cast<int>(r.integer(6)), out.about = r.text(7);
  out.key = r.text(8), out.body = r.blob(9), out.hash = r.blob(10);
  return out;
}

// What a sealed body lies beside: it opens nowhere else.
std::string place(const Fact& f) {
  return beside({"fact", f.id, f.stream, f.made_at, f.kind, std::to_string(f.version), f.about, f.key});
}

// With its body open, where there is a key for it.
Fact told(Fact fact, const std::optional<Key>& key) {
  fact.hash = hexadecimal(fact.hash);
  if (fact.key.empty()) return fact;
  auto body = key ? key->open(fact.body, place(fact)) : std::nullopt;
  fact.closed = !body;
  fact.body = body ? unfilled(std::move(*body)).value_or("") : "";
  return fact;
}

Expected<std::optional<Fact>> one(Connection& db, const std::string& where,
                                  const std::map<std::string, Value>& values) {
  std::optional<Fact> out;
  const auto read = db.run("SELECT " + std::string(columns) + " FROM facts AS f " + where, values,
                           [&](const Row& row) { out = fact_of(row); });
  if (!read) return tl::unexpected(read.error());
  return out;
}

}  // namespace

Expected<void> expect_json(Connection& db, const std::string& text) {
  std::int64_t valid = 0;
  const auto read =
      db.run("SELECT json_valid($text)", {{"$text", text}}, [&](const Row& row) { valid = row.integer(0); });
  if (!read) return read;
  return valid ? Expected<void>() : tl::unexpected(Trouble{"store_not_json", "body", 0});
}

Expected<Fact> append_fact(Connection& db, const Keys& keys, const NewFact& asked) {
  std::optional<Key> key;
  if (!asked.key.empty()) {
    auto made = keys.made_for(db, asked.key);
    if (!made) return tl::unexpected(made.error());
    key = *made;
  }
  const auto known = one(db, "WHERE f.id = $id", {{"$id", asked.id}});
  if (!known) return tl::unexpected(known.error());
  if (*known) {
    // Handed in twice: the same fact is the answer, another one under its id is a conflict.
    Fact there = told(**known, key);
    const bool same = there.stream == asked.stream && there.kind == asked.kind && there.version == asked.version &&
                      there.about == asked.about && there.key == asked.key && there.body == asked.body;
    if (same) return there;
    return tl::unexpected(Trouble{"store_id_taken", asked.id, there.seq});
  }
  const auto last = one(db, "ORDER BY f.store_seq DESC LIMIT 1", {});
  if (!last) return tl::unexpected(last.error());
  std::int64_t newest = 0;
  const auto read = db.run("SELECT coalesce(max(seq), 0) FROM facts WHERE stream = $stream",
                           {{"$stream", asked.stream}}, [&](const Row& row) { newest = row.integer(0); });
  if (!read) return tl::unexpected(read.error());
  if (asked.after_seq != NewFact::at_the_end && newest != asked.after_seq)
    return tl::unexpected(Trouble{"store_conflict", "changed meanwhile", newest});
  if (const auto json = expect_json(db, asked.body); !json) return tl::unexpected(json.error());
  Fact made;
  made.store_seq = *last ? (*last)->store_seq + 1 : 1;
  made.id = asked.id, made.stream = asked.stream, made.seq = newest + 1, made.made_at = asked.made_at;
  made.kind = asked.kind, made.version = asked.version, made.about = asked.about, made.key = asked.key;
  made.body = key ? key->seal(filled(asked.body), place(made)) : asked.body;
  made.hash = chain_hash(*last ? (*last)->hash : "", made);
  const auto kept = db.run(
      "INSERT INTO facts (store_seq, id, stream, seq, made_at, kind, version, about, key, body, hash) "
      "VALUES ($store_seq, $id, $stream, $seq, $made_at, $kind, $version, $about, $key, $body, $hash)",
      {{"$store_seq", made.store_seq},
       {"$id", made.id},
       {"$stream", made.stream},
       {"$seq", made.seq},
       {"$made_at", made.made_at},
       {"$kind", made.kind},
       {"$version", std::int64_t{made.version}},
       {"$about", made.about},
       {"$key", made.key},
       {"$body", Value::blob(made.body)},
       {"$hash", Value::blob(made.hash)}});
  if (!kept) return tl::unexpected(kept.error());
  return told(std::move(made), key);
}

Expected<std::vector<Fact>> read_facts(Connection& db, const Keys& keys, const FactsAsked& asked) {
  std::vector<Fact> out;
  std::optional<std::int64_t> bad;
  // One condition at a time that an index serves; the rest is compared.
  std::string where = "f.store_seq > $after";
  std::map<std::string, Value> values{{"$after", asked.after}, {"$limit", std::int64_t{asked.limit}}};
  const auto only = [&](const char* column, const std::string& value) {
    if (value.empty()) return;
    where += std::string(" AND f.") + column + " = $" + column;
    values.emplace(std::string("$") + column, value);
  };
  only("stream", asked.stream);
  only("key", asked.key);
  only("kind", asked.kind);
  const auto read =
      db.run("SELECT " + std::string(columns) +
                 ", before.hash, keys.wrapped FROM facts AS f LEFT JOIN facts AS before ON before.store_seq = "
                 "f.store_seq - 1 LEFT JOIN keys ON keys.owner = f.key WHERE " +
                 where + " ORDER BY f.store_seq LIMIT $limit",
             values, [&](const Row& r) {
               Fact f = fact_of(r);
               const bool whole = f.hash == chain_hash(r.blob(11), f) &&
                                  is_utf8(f.id + f.stream + f.made_at + f.kind + f.about + f.key);
               if (!whole && !bad) bad = f.store_seq;
               const std::string wrapped = r.blob(12);
               out.push_back(told(std::move(f), wrapped.empty() ? std::nullopt : keys.unwrapped(r.text(8), wrapped)));
             });
  if (!read) return tl::unexpected(read.error());
  if (bad) return tl::unexpected(Trouble{"store_damaged", "entry " + std::to_string(*bad), *bad});
  return out;
}

}  // namespace strandline::store
