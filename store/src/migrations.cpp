#include "migrations.h"

#include <array>

#include "migrations_embedded.h"
#include "move_entries.h"

namespace strandline::store {

namespace {

constexpr std::size_t facts_since = 4;

}  // namespace

std::int64_t newest_migration() { return static_cast<std::int64_t>(migrations.size()); }

Expected<void> migrate(Connection& db, const Keys& keys, bool as_found) {
  return db.transaction([&]() -> Expected<void> {
    std::int64_t seen = 0;
    if (auto read = db.run("PRAGMA user_version", {}, [&](const Row& row) { seen = row.integer(0); }); !read)
      return read;
    for (std::size_t i = static_cast<std::size_t>(seen); i < migrations.size(); ++i) {
      const std::string mark = "PRAGMA user_version = " + std::to_string(i + 1);
      if (auto made = db.script(migrations[i]); !made) return made;
      if (i + 1 == facts_since) {
        if (auto moved = move_entries(db, keys, as_found); !moved) return moved;
      }
      if (auto marked = db.script(mark); !marked) return marked;
    }
    if (auto ours = keys.claim(db); !ours) return ours;
    return keys.destroy_erased(db);
  });
}

}  // namespace strandline::store
