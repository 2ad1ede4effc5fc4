// The driver over libpq: one salon of a database that holds many.
#pragma once

#include <libpq-fe.h>

#include <vector>

#include "sql.h"

namespace strandline::store {

// Whether `path` names a database rather than a file: postgresql://…
bool is_postgres(const std::string& path);

// postgresql://HOST/DATABASE?…#SALON taken apart.
struct PostgresPlace {
  std::string address;  // what libpq is given: without #SALON
  std::string salon;    // "salon" unless said; 1 … 40 of a-z, 0-9 and -
  std::string told;     // for errors: neither salon nor settings
};
// Troubles: store_address (it cannot be read), store_salon_key, store_password_shown (there is one in it).
Expected<PostgresPlace> read_place(const std::string& path);

class Postgres final : public Connection {
 public:
  // Connected, brought up to date under a lock, and in the role that owns nothing. Troubles: store_unavailable,
  // store_newer, store_not_durable (the database answers before it has written).
  static Expected<std::unique_ptr<Postgres>> open(const Options& options);
  ~Postgres() override;

  const PostgresPlace& place() const { return place_; }
  Expected<void> script(const std::string& sql) override;
  Expected<void> run(std::string_view sql, const std::map<std::string, Value>& values = {},
                     const std::function<void(const Row&)>& each = {}) override;
  void until(const std::stop_token& stop) override { stop_ = stop; }
  // Holds the salon's row; inside another one, a part of it. A COMMIT without an answer is store_unavailable: what was
  // written may be there. Trouble store_missing: there is no such salon.
  Expected<void> transaction(const std::function<Expected<void>()>& work) override;
  // One state of the salon, nothing written.
  Expected<void> reading(const std::function<Expected<void>()>& work);
  // A transaction for a salon that is not there yet.
  Expected<void> founding(const std::function<Expected<void>()>& work);

 private:
  Postgres(const Options& options, PostgresPlace place);
  bool failing() const { return fails_ && fails_(); }
  Expected<void> connect();
  Expected<void> migrate();
  Expected<void> begin(const char* how);
  Expected<void> finish(const std::function<Expected<void>()>& work);
  Expected<void> in_salon(const char* how, const std::function<Expected<void>()>& work);
  Expected<const char*> prepared(std::string_view sql, const std::map<std::string, Value>& values);
  tl::unexpected<Trouble> trouble(const PGresult* result) const;

  struct Statement {
    std::string name;
    std::vector<std::string> order;  // of its $names
  };
  std::function<bool()> fails_;
  int patience_ms_;
  PostgresPlace place_;
  std::stop_token stop_;
  PGconn* db_ = nullptr;
  std::map<std::string, Statement, std::less<>> statements_;
  bool inside_ = false;  // a transaction
};

}  // namespace strandline::store
