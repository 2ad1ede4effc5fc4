#include "strandline/salon/door_rules.h"

#include <sstream>

#include "figures.h"

namespace strandline::salon {

namespace {
constexpr std::size_t digits = 12;
}

bool CommonPasswords::has(std::string_view plain) const {
  return plain.size() <= longest && digests.contains(store::token_digest(plain).substr(0, digits));
}

Result<CommonPasswords> read_common_passwords(const wire::Json& json) {
  for (const char* key : {"longest", "digests"}) {
    if (!json.is_object() || !json.contains(key)) return tl::unexpected(Problems{{"missing_key", "", {{"key", key}}}});
  }
  if (!json["longest"].is_number_unsigned())
    return tl::unexpected(
        Problems{{"wrong_type", "/longest", {{"expected", "number"}, {"found", json["longest"].type_name()}}}});
  CommonPasswords out{{}, json["longest"].get<std::size_t>()};
  for (const wire::Json& row : json["digests"]) {
    if (!row.is_string())
      return tl::unexpected(Problems{{"wrong_type", "/digests", {{"expected", "text"}, {"found", row.type_name()}}}});
    std::istringstream words(row.get<std::string>());
    for (std::string one; words >> one;) out.digests.insert(one);
  }
  return out;
}

Result<DoorRules> read_door_rules(const wire::Json& json) {
  auto read = Figures::read(json);
  if (!read) return tl::unexpected(read.error());
  DoorRules out;
  const auto take = [&](const char* key, int& into, int least, int most) { read->take(key, into, least, most); };
  // Bounds: what the program can do, and what would leave the door open.
  take("passphrase_signs", out.passphrase_signs, 8, 64);
  take("pin_digits", out.pin_digits, 4, 12);
  take("hash_passes", out.hash.passes, 1, 100);
  take("hash_mebibytes", out.hash.mebibytes, 1, 4096);
  take("hashes_waiting", out.hashes_waiting, 1, 100);
  take("tries_free", out.tries_free, 1, 20);
  take("wait_first_s", out.wait_first_s, 1, 3600);
  take("wait_most_s", out.wait_most_s, 1, 86400);
  take("address_tries_free", out.address_tries_free, 1, 1000);
  take("address_wait_most_s", out.address_wait_most_s, 1, 86400);
  take("tries_forgotten_h", out.tries_forgotten_h, 1, 720);
  take("idle_minutes", out.idle_minutes, 1, 1440);
  take("session_hours", out.session_hours, 1, 168);
  take("device_days", out.device_days, 1, 400);
  take("invite_minutes", out.invite_minutes, 1, 60);
  if (!read->problems().empty()) return tl::unexpected(read->problems());
  return out;
}

}  // namespace strandline::salon
