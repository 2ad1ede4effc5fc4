#include "strandline/salon/door_rules.h"

#include <cmath>
#include <limits>

namespace strandline::salon {

Result<DoorRules> read_door_rules(const wire::Json& json) {
  std::map<std::string, double> values;
  const auto list = json.find("constants");
  if (list == json.end() || !list->is_array())
    return tl::unexpected(Problems{{"missing_key", "", {{"key", "constants"}}}});
  for (const wire::Json& one : *list) {
    if (!one.is_object() || !one.contains("key") || !one["key"].is_string()) continue;
    const auto value = one.find("value");
    values[one["key"].get<std::string>()] =
        value != one.end() && value->is_number() ? value->get<double>() : std::numeric_limits<double>::quiet_NaN();
  }
  Problems problems;
  DoorRules out;
  const auto take = [&](const char* key, int& into, int least, int most) {
    const auto found = values.find(key);
    if (found == values.end()) return problems.push_back({"missing_key", "", {{"key", key}}});
    const double value = found->second;
    if (!(value >= least && value <= most) || value != std::floor(value)) {
      return problems.push_back(
          {"out_of_range",
           std::string("/") + key,
           {{"value", wire::print(wire::Json(value))}, {"min", std::to_string(least)}, {"max", std::to_string(most)}}});
    }
    into = static_cast<int>(value);
  };
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
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

}  // namespace strandline::salon
