#include "people_checks.h"

#include <algorithm>
#include <filesystem>
#include <set>

#include "strandline/store/plain.h"

namespace strandline::salon {

namespace {

constexpr std::size_t name_bytes_max = 120, secret_bytes_max = 1024;

tl::unexpected<Problems> problem(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

}  // namespace

Result<void> check_name(const std::string& name) {
  if (store::plain(name).empty()) return problem("name_missing");
  if (name.size() > name_bytes_max) return problem("too_long", {{"max", std::to_string(name_bytes_max)}});
  if (store::signs_of(name) == 0) return problem("invalid_utf8");
  const auto control = [](unsigned char c) { return c < ' ' || c == 0x7F; };
  if (std::any_of(name.begin(), name.end(), control)) return problem("control_character");
  return {};
}

Result<void> check_passphrase(const std::string& passphrase, const std::string& name, const DoorRules& rules) {
  constexpr std::size_t different_least = 5;
  if (passphrase.size() > secret_bytes_max) return problem("too_long", {{"max", std::to_string(secret_bytes_max)}});
  if (store::signs_of(passphrase) < static_cast<std::size_t>(rules.passphrase_signs))
    return problem("passphrase_short", {{"min", std::to_string(rules.passphrase_signs)}});
  const std::string key = store::plain(passphrase), own = store::plain(name);
  if (std::set<char>(key.begin(), key.end()).size() < different_least || key == own || key == own + own)
    return problem("passphrase_plain");
  return {};
}

Result<void> check_pin(const std::string& pin, const DoorRules& rules) {
  constexpr std::size_t digits_most = 12;
  const bool digits = std::all_of(pin.begin(), pin.end(), [](char c) { return c >= '0' && c <= '9'; });
  if (!digits || pin.size() < static_cast<std::size_t>(rules.pin_digits) || pin.size() > digits_most)
    return problem("pin_not_digits", {{"min", std::to_string(rules.pin_digits)}});
  const bool in_step =
      std::adjacent_find(pin.begin(), pin.end(), [&](char a, char b) { return b - a != pin[1] - pin[0]; }) == pin.end();
  if (in_step) return problem("pin_plain");  // 111111, 123456, 987654
  return {};
}

Result<void> check_time_zone(const std::string& zone) {
  constexpr std::size_t longest = 60;
  const auto sign = [](unsigned char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '/' || c == '_' ||
           c == '-' || c == '+';
  };
  const bool written = !zone.empty() && zone.size() <= longest && zone.front() != '/' &&
                       zone.find("//") == std::string::npos && std::all_of(zone.begin(), zone.end(), sign);
  const std::filesystem::path zones = "/usr/share/zoneinfo";
  std::error_code error;
  const bool listed =
      !std::filesystem::exists(zones / "UTC", error) || std::filesystem::is_regular_file(zones / zone, error);
  if (!written || !listed) return problem("unknown_time_zone", {{"zone", zone}});
  return {};
}

}  // namespace strandline::salon
