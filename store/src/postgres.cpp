#include "postgres.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "postgres_embedded.h"

namespace strandline::store {

namespace {

// https://www.postgresql.org/docs/15/catalog-pg-type.html
constexpr Oid bytea_type = 17, int8_type = 20, text_type = 25;
constexpr int binary = 1;
constexpr const char* migrating = "SELECT pg_advisory_xact_lock(1400129108)";  // "StrT", as in the file

struct Clear {
  void operator()(PGresult* r) const { PQclear(r); }
};
using Result = std::unique_ptr<PGresult, Clear>;

Trouble unavailable(std::string detail) { return {"store_unavailable", std::move(detail), 0}; }

std::string big_endian(std::int64_t number) {
  std::string out(8, '\0');
  for (int i = 0; i < 8; ++i) out[static_cast<std::size_t>(i)] = static_cast<char>(number >> (56 - 8 * i));
  return out;
}

class PostgresRow final : public Row {
 public:
  explicit PostgresRow(const PGresult* result) : result_(result) {}
  // Numbers come as 1, 4 or 8 bytes, the first the greatest.
  std::int64_t integer(int column) const override {
    const std::string bytes = blob(column);
    if (bytes.empty()) return 0;
    std::int64_t out = static_cast<signed char>(bytes[0]);
    for (std::size_t i = 1; i < bytes.size(); ++i) out = out * 256 + static_cast<unsigned char>(bytes[i]);
    return out;
  }
  std::string text(int column) const override { return blob(column); }
  std::string blob(int column) const override {
    return {PQgetvalue(result_, 0, column), static_cast<std::size_t>(PQgetlength(result_, 0, column))};
  }

 private:
  const PGresult* result_;
};

// The statement with its $names numbered, and their order. Names within quotes stay.
std::string numbered(std::string_view sql, std::vector<std::string>& order) {
  std::string out;
  bool quoted = false;
  for (std::size_t i = 0; i < sql.size(); ++i) {
    if (sql[i] == '\'') quoted = !quoted;
    if (quoted || sql[i] != '$') {
      out += sql[i];
      continue;
    }
    std::size_t end = i + 1;
    while (end < sql.size() && (std::isalnum(static_cast<unsigned char>(sql[end])) || sql[end] == '_')) ++end;
    const std::string name(sql.substr(i, end - i));
    auto found = std::find(order.begin(), order.end(), name);
    if (found == order.end()) found = order.insert(order.end(), name);
    out += '$' + std::to_string(found - order.begin() + 1);
    i = end - 1;
  }
  return out;
}

bool is_salon_key(const std::string& key) {
  constexpr std::string_view signs = "abcdefghijklmnopqrstuvwxyz0123456789-";
  return !key.empty() && key.size() <= 40 && key[0] != '-' && key.find_first_not_of(signs) == std::string::npos;
}

}  // namespace

bool is_postgres(const std::string& path) {
  return path.starts_with("postgresql://") || path.starts_with("postgres://");
}

Expected<PostgresPlace> read_place(const std::string& path) {
  PostgresPlace out;
  const auto hash = path.find('#');
  out.address = path.substr(0, hash);
  out.salon = hash == std::string::npos ? "salon" : path.substr(hash + 1);
  out.told = "the database";
  if (!is_salon_key(out.salon)) return tl::unexpected(Trouble{"store_salon_key", out.told, 0});
  char* said = nullptr;
  PQconninfoOption* options = PQconninfoParse(out.address.c_str(), &said);
  if (!options) {
    PQfreemem(said);  // repeats what was given, a password too
    return tl::unexpected(Trouble{"store_address", out.told, 0});
  }
  bool password = false;
  for (const PQconninfoOption* o = options; o->keyword; ++o) {
    const std::string_view word = o->keyword;
    if (o->val && (word == "password" || word == "sslpassword")) password = true;
    if (o->val && word == "dbname") out.told = "the database " + std::string(o->val);
  }
  PQconninfoFree(options);
  if (password) return tl::unexpected(Trouble{"store_password_shown", out.told, 0});
  return out;
}

Postgres::Postgres(const Options& options, PostgresPlace place)
    : fails_(options.fails), patience_ms_(options.patience_ms), place_(std::move(place)) {}

Postgres::~Postgres() { PQfinish(db_); }

Expected<std::unique_ptr<Postgres>> Postgres::open(const Options& options) {
  auto place = read_place(options.path);
  if (!place) return tl::unexpected(place.error());
  std::unique_ptr<Postgres> out(new Postgres(options, std::move(*place)));
  if (auto connected = out->connect(); !connected) return tl::unexpected(connected.error());
  return out;
}

// What a database says besides (DETAIL, CONTEXT) repeats values, so only the first line is told.
tl::unexpected<Trouble> Postgres::trouble(const PGresult* result) const {
  const char* state = PQresultErrorField(result, PG_DIAG_SQLSTATE);
  const char* said = PQresultErrorField(result, PG_DIAG_MESSAGE_PRIMARY);
  const std::string code = state ? state : "";
  if (!state || PQstatus(db_) != CONNECTION_OK) return tl::unexpected(unavailable(place_.told + " does not answer"));
  if (code == "22021" || code == "22P05") return tl::unexpected(Trouble{"store_not_json", "body", 0});
  if (code == "23505") return tl::unexpected(Trouble{"store_conflict", "changed meanwhile", 0});
  if (code == "55P03") return tl::unexpected(unavailable("another server writes in this salon"));
  if (code == "XX001" || code == "XX002") return tl::unexpected(Trouble{"store_damaged", said ? said : code, 0});
  return tl::unexpected(unavailable(place_.told + ": " + (said ? said : "") + " (" + code + ")"));
}

Expected<void> Postgres::connect() {
  if (failing()) return tl::unexpected(unavailable("open"));
  PQfinish(db_);
  statements_.clear();
  // What stands before the address may be said otherwise in it.
  constexpr std::array keys{"connect_timeout", "tcp_user_timeout", "fallback_application_name",
                            "dbname",          "client_encoding",  static_cast<const char*>(nullptr)};
  const std::array values{
      "5", "10000", "strandline", place_.address.c_str(), "UTF8", static_cast<const char*>(nullptr)};
  db_ = PQconnectdbParams(keys.data(), values.data(), 1);
  if (PQstatus(db_) != CONNECTION_OK) {
    std::string said = PQerrorMessage(db_);
    said.resize(std::min(said.size(), said.find('\n')));
    return tl::unexpected(unavailable(said));
  }
  PQsetNoticeProcessor(db_, [](void*, const char*) {}, nullptr);
  const std::string patience = std::to_string(patience_ms_);
  if (auto set = script("SET search_path = strandline, pg_catalog; SET lock_timeout = " + patience +
                        "; SET idle_in_transaction_session_timeout = 60000; SET standard_conforming_strings = on; "
                        "SELECT set_config('synchronous_commit', 'on', false) WHERE "
                        "current_setting('synchronous_commit') IN ('off', 'local')");
      !set)
    return set;
  bool durable = false;
  if (auto read = run("SELECT current_setting('fsync') = 'on'", {}, [&](const Row& r) { durable = r.integer(0) == 1; });
      !read)
    return read;
  if (!durable) return tl::unexpected(Trouble{"store_not_durable", place_.told, 0});
  if (auto made = migrate(); !made) return made;
  return script("SET ROLE strandline_salon");
}

Expected<void> Postgres::migrate() {
  const auto newest = static_cast<std::int64_t>(postgres_migrations.size());
  std::int64_t there = 0;
  const auto look = [&]() -> Expected<void> {
    bool any = false;
    auto read = run("SELECT to_regclass('strandline.migrated') IS NOT NULL", {},
                    [&](const Row& r) { any = r.integer(0) == 1; });
    if (!read || !any) return read;
    return run("SELECT coalesce(max(version), 0) FROM strandline.migrated", {},
               [&](const Row& r) { there = r.integer(0); });
  };
  if (auto seen = look(); !seen) return seen;
  if (there > newest) return tl::unexpected(Trouble{"store_newer", place_.told, there});
  if (there == newest) return {};
  if (auto begun = script("BEGIN"); !begun) return begun;
  return finish([&]() -> Expected<void> {
    if (auto locked = script(migrating); !locked) return locked;
    if (auto seen = look(); !seen) return seen;
    for (auto i = static_cast<std::size_t>(there); i < postgres_migrations.size(); ++i) {
      if (auto made = script(postgres_migrations[i]); !made) return made;
      if (auto marked = run("INSERT INTO strandline.migrated VALUES ($version)",
                            {{"$version", static_cast<std::int64_t>(i + 1)}});
          !marked)
        return marked;
    }
    return {};
  });
}

Expected<void> Postgres::script(const std::string& sql) {
  if (failing()) return tl::unexpected(unavailable("interrupted"));
  const Result done(PQexec(db_, sql.c_str()));
  const auto status = PQresultStatus(done.get());
  return status == PGRES_COMMAND_OK || status == PGRES_TUPLES_OK ? Expected<void>() : trouble(done.get());
}

Expected<const char*> Postgres::prepared(std::string_view sql, const std::map<std::string, Value>& values) {
  auto found = statements_.find(sql);
  if (found != statements_.end()) return found->second.name.c_str();
  Statement made;
  made.name = "s" + std::to_string(statements_.size());
  const std::string text = numbered(sql, made.order);
  std::vector<Oid> types;
  for (const std::string& name : made.order) {
    const auto value = values.find(name);
    if (value == values.end()) return tl::unexpected(unavailable("no value for " + name));
    const auto kind = value->second.kind;
    types.push_back(kind == Value::Kind::number ? int8_type : kind == Value::Kind::text ? text_type : bytea_type);
  }
  const Result done(PQprepare(db_, made.name.c_str(), text.c_str(), static_cast<int>(types.size()), types.data()));
  if (PQresultStatus(done.get()) != PGRES_COMMAND_OK) return trouble(done.get());
  found = statements_.emplace(std::string(sql), std::move(made)).first;
  return found->second.name.c_str();
}

Expected<void> Postgres::run(std::string_view sql, const std::map<std::string, Value>& values,
                             const std::function<void(const Row&)>& each) {
  if (failing()) return tl::unexpected(unavailable("interrupted"));
  const auto name = prepared(sql, values);
  if (!name) return tl::unexpected(name.error());
  const std::vector<std::string>& order = statements_.find(sql)->second.order;
  std::vector<std::string> bytes;
  std::vector<const char*> starts;
  std::vector<int> lengths;
  for (const std::string& one : order) {
    const auto value = values.find(one);
    if (value == values.end()) return tl::unexpected(unavailable("no value for " + one));
    bytes.push_back(value->second.kind == Value::Kind::number ? big_endian(value->second.number) : value->second.text);
  }
  for (const std::string& b : bytes) starts.push_back(b.data()), lengths.push_back(static_cast<int>(b.size()));
  const std::vector<int> formats(order.size(), binary);
  if (PQsendQueryPrepared(db_, *name, static_cast<int>(order.size()), starts.data(), lengths.data(), formats.data(),
                          binary) == 0)
    return tl::unexpected(unavailable(place_.told + " does not answer"));
  PQsetSingleRowMode(db_);
  // Whatever ends this, an exception too: the rest of the answer is taken from the wire.
  struct Rest {
    PGconn* db;
    ~Rest() {
      while (const Result left{PQgetResult(db)}) continue;
    }
  } rest{db_};
  while (const Result one{PQgetResult(db_)}) {
    if (failing()) return tl::unexpected(unavailable("interrupted"));
    if (stop_.stop_requested()) {
      std::array<char, 256> said{};
      if (PGcancel* cancel = PQgetCancel(db_)) {
        PQcancel(cancel, said.data(), static_cast<int>(said.size()));
        PQfreeCancel(cancel);
      }
      return tl::unexpected(unavailable("interrupted"));
    }
    const auto status = PQresultStatus(one.get());
    if (status == PGRES_SINGLE_TUPLE) {
      if (each) each(PostgresRow(one.get()));
    } else if (status != PGRES_TUPLES_OK && status != PGRES_COMMAND_OK) {
      return trouble(one.get());
    }
  }
  return {};
}

// A connection that has gone meanwhile is made again once: nothing of the work was done on it.
Expected<void> Postgres::begin(const char* how) {
  auto begun = PQstatus(db_) == CONNECTION_OK ? script(how) : Expected<void>(tl::unexpected(unavailable("gone")));
  if (begun || PQstatus(db_) == CONNECTION_OK) return begun;
  if (auto again = connect(); !again) return again;
  return script(how);
}

Expected<void> Postgres::finish(const std::function<Expected<void>()>& work) {
  struct Undone {
    Postgres& own;
    ~Undone() {
      own.inside_ = false;
      if (PQtransactionStatus(own.db_) != PQTRANS_IDLE) const Result undone{PQexec(own.db_, "ROLLBACK")};
    }
  } undone{*this};
  inside_ = true;
  if (auto done = work(); !done) return done;
  if (failing()) return tl::unexpected(unavailable("interrupted"));
  const Result kept(PQexec(db_, "COMMIT"));
  if (PQresultStatus(kept.get()) != PGRES_COMMAND_OK) return trouble(kept.get());
  // A transaction that had failed answers COMMIT with ROLLBACK.
  const bool committed = std::string_view(PQcmdStatus(kept.get())) == "COMMIT";
  return committed ? Expected<void>() : tl::unexpected(unavailable("not committed"));
}

Expected<void> Postgres::in_salon(const char* how, const std::function<Expected<void>()>& work) {
  if (auto begun = begin(how); !begun) return begun;
  return finish([&]() -> Expected<void> {
    auto set = run("SELECT set_config('strandline.salon', $salon, true)", {{"$salon", place_.salon}});
    return set ? work() : set;
  });
}

Expected<void> Postgres::founding(const std::function<Expected<void>()>& work) { return in_salon("BEGIN", work); }

Expected<void> Postgres::reading(const std::function<Expected<void>()>& work) {
  if (inside_) return work();
  return in_salon("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY", work);
}

Expected<void> Postgres::transaction(const std::function<Expected<void>()>& work) {
  if (inside_) {
    if (auto begun = script("SAVEPOINT part"); !begun) return begun;
    auto done = work();
    const auto ended = script(done ? "RELEASE part" : "ROLLBACK TO part; RELEASE part");
    return !done ? done : ended;
  }
  return in_salon("BEGIN ISOLATION LEVEL READ COMMITTED", [&]() -> Expected<void> {
    bool there = false;
    auto locked = run("SELECT saves FROM salons FOR UPDATE", {}, [&](const Row&) { there = true; });
    if (!locked) return locked;
    return there ? work() : tl::unexpected(Trouble{"store_missing", place_.told, 0});
  });
}

}  // namespace strandline::store
