#include "access.h"

#include <algorithm>
#include <array>

namespace strandline::server {

namespace {

using salon::apprentice, salon::assistant, salon::colourist, salon::everybody, salon::manager, salon::owner,
    salon::Roles;

constexpr Roles leads = manager | owner;                 // look after people
constexpr Roles plans = colourist | apprentice | owner;  // begin a visit
constexpr Roles orders = colourist | manager | owner;    // says what is on the shelf
constexpr Roles works = plans | assistant;               // write into a visit

// Reasons: docs/decisions/0014-who-may-do-what.md.
constexpr std::array table{
    Access{"GET", "/api/v1/health", everybody, true, true},
    // For what looks after services on this machine: of nobody, and of nothing that was asked.
    Access{"GET", "/healthz", everybody, true, false, true},
    Access{"GET", "/metrics", everybody, true, false, true},
    Access{"GET", "/api/v1/door", everybody, true, true},
    Access{"POST", "/api/v1/door/found", everybody, true},  // refused by itself once there is an owner
    Access{"POST", "/api/v1/door/sign-in", everybody, true},
    Access{"GET", "/api/v1/door/authority", everybody, true, true},
    Access{"POST", "/api/v1/door/redeem", everybody, true, true},
    Access{"POST", "/api/v1/door/sign-out", everybody},
    Access{"POST", "/api/v1/door/passphrase", everybody},
    Access{"POST", "/api/v1/door/pin", everybody},
    Access{"POST", "/api/v1/door/pair", owner},
    Access{"POST", "/api/v1/door/recovery-words", owner},
    Access{"GET", "/api/v1/people", leads},
    Access{"POST", "/api/v1/people", leads},
    Access{"POST", "/api/v1/people/{id}/roles", leads},
    Access{"POST", "/api/v1/people/{id}/reset", leads},
    Access{"POST", "/api/v1/people/{id}/revoke", leads},
    Access{"POST", "/api/v1/people/{id}/leave", leads},
    Access{"POST", "/api/v1/devices/invite", owner},
    Access{"POST", "/api/v1/devices/{id}/unpair", owner},
    Access{"GET", "/api/v1/shelf", everybody},
    Access{"POST", "/api/v1/shelf/read", everybody},
    Access{"GET", "/api/v1/shelf/classes", everybody},
    Access{"POST", "/api/v1/shelf/choose", orders},
    Access{"GET", "/api/v1/shelves", everybody},
    Access{"POST", "/api/v1/shelves", orders},
    Access{"GET", "/api/v1/shelves/{id}", everybody},
    Access{"PUT", "/api/v1/shelves/{id}", orders},
    Access{"POST", "/api/v1/shelves/{id}/tubes", everybody},  // whoever finds one empty
    Access{"GET", "/api/v1/shelves/{id}/history", everybody},
    Access{"GET", "/api/v1/shelves/{id}/table", everybody},
    Access{"GET", "/api/v1/hand-notes", everybody},
    Access{"PUT", "/api/v1/hand-notes/{id}", plans},
    Access{"GET", "/api/v1/scale", everybody},  // grams, of nobody in particular
    Access{"GET", "/api/v1/stock", everybody},
    Access{"GET", "/api/v1/stock/moves", everybody},
    Access{"POST", "/api/v1/stock/moves", everybody},  // whoever unpacks, counts or throws away
    Access{"GET", "/api/v1/stock/report", leads},
    Access{"GET", "/api/v1/stock/table", orders},
    Access{"POST", "/api/v1/stock/table", everybody},
    Access{"GET", "/api/v1/prices", everybody},
    Access{"PUT", "/api/v1/prices", leads},
    Access{"POST", "/api/v1/price", everybody},
    Access{"GET", "/api/v1/tones", everybody},
    Access{"GET", "/api/v1/levels", everybody},
    // Questions about a document that the asker has: they open nothing of the salon.
    Access{"POST", "/api/v1/assess", everybody},
    Access{"POST", "/api/v1/aim", everybody},
    Access{"POST", "/api/v1/predict", everybody},
    Access{"POST", "/api/v1/formulate", everybody},
    Access{"POST", "/api/v1/schedule", everybody},
    Access{"POST", "/api/v1/replan", everybody},
    Access{"POST", "/api/v1/plan", everybody},
    Access{"POST", "/api/v1/reach", everybody},
    Access{"POST", "/api/v1/fade", everybody},
    Access{"POST", "/api/v1/grow", everybody},
    Access{"POST", "/api/v1/what-if", everybody},
    Access{"POST", "/api/v1/review", everybody},
    Access{"POST", "/api/v1/convert", everybody},
    Access{"POST", "/api/v1/substitute", everybody},
    Access{"GET", "/api/v1/visits", everybody},
    Access{"POST", "/api/v1/visits", plans},
    Access{"GET", "/api/v1/visits/{id}", everybody},  // health for who works on hair only
    Access{"PUT", "/api/v1/visits/{id}", works},
    Access{"GET", "/api/v1/visits/{id}/facts", salon::opens_health},
    Access{"POST", "/api/v1/visits/{id}/facts", works},
    Access{"POST", "/api/v1/visits/{id}/hand-in", works},
    Access{"GET", "/api/v1/clients", everybody},
    Access{"POST", "/api/v1/clients", everybody},  // a card or a list that somebody brought along
    Access{"GET", "/api/v1/clients/{id}", everybody},
    Access{"GET", "/api/v1/clients/{id}/everything", salon::opens_health},
    Access{"POST", "/api/v1/clients/{id}/erase", owner},
    Access{"GET", "/api/v1/diary", everybody},
    Access{"GET", "/api/v1/diary/free", everybody},
    Access{"GET", "/api/v1/diary/tests", everybody},
    Access{"GET", "/api/v1/diary/due", everybody},
    Access{"POST", "/api/v1/bookings", everybody},  // whoever answers the telephone
    Access{"GET", "/api/v1/bookings/{id}", everybody},
    Access{"GET", "/api/v1/changes", everybody},
    // Whose results taught what; a person's own only to who opens health.
    Access{"GET", "/api/v1/learned", salon::opens_health},
    Access{"POST", "/api/v1/learned/{id}", orders},
    Access{"POST", "/api/v1/measure", everybody},
    Access{"POST", "/api/v1/measure/photo", everybody},
    Access{"POST", "/api/v1/measure/swatches", everybody},
};

bool is_id(std::string_view text) {
  constexpr std::size_t longest = 80;
  return !text.empty() && text.size() <= longest && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
  });
}

bool matches(std::string_view pattern, std::string_view path) {
  while (!pattern.empty() && !path.empty()) {
    const std::string_view wanted = pattern.substr(0, pattern.find('/', 1)), given = path.substr(0, path.find('/', 1));
    if (wanted == "/{id}" ? !is_id(given.substr(1)) : wanted != given) return false;
    pattern.remove_prefix(wanted.size());
    path.remove_prefix(given.size());
  }
  return pattern.empty() && path.empty();
}

}  // namespace

std::span<const Access> access_table() { return table; }

Found find_access(std::string_view method, std::string_view path) {
  Found out;
  for (const Access& row : table) {
    if (!matches(row.path, path)) continue;
    out.known = true;
    if (row.method == method || (method == "HEAD" && row.method == "GET")) out.row = &row;
  }
  return out;
}

}  // namespace strandline::server
