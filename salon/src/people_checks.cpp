#include "people_checks.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>
#include <sstream>
#include <vector>

#include "strandline/store/plain.h"

namespace strandline::salon {

namespace {

constexpr std::size_t name_bytes_max = 120, secret_bytes_max = 1024;

tl::unexpected<Problems> problem(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

// What the commonest passphrases of 12 signs and more are put together from; from memory.
constexpr std::array common{
    "password",      "passwort",   "passphrase", "contraseña", "motdepasse",  "iloveyou",  "princess",   "sunshine",
    "football",      "baseball",   "superman",   "qwertyuiop", "asdfghjkl",   "zxcvbnm",   "qwertzuiop", "azertyuiop",
    "qwerty",        "qwertz",     "azerty",     "asdfgh",     "1q2w3e4r5t",  "1q2w3e4r",  "qazwsxedc",  "qazwsx",
    "1234567890",    "0987654321", "987654321",  "123456789",  "12345678",    "1234567",   "123456",     "12345",
    "1234",          "123123",     "abcdefghij", "abcdef",     "abc123",      "abcd",      "letmein",    "welcome",
    "administrator", "admin",      "monkey",     "dragon",     "master",      "michael",   "jennifer",   "computer",
    "internet",      "starwars",   "whatever",   "trustno1",   "changeme",    "secret",    "login",      "hello",
    "salon",         "friseur",    "coiffeur",   "peluqueria", "hairdresser", "strandline"};

// Signs that are left once everything common is taken out, the longest first.
std::size_t uncommon(std::string text) {
  std::vector<std::string> parts;
  for (const char* one : common) parts.push_back(store::plain(one));
  std::sort(parts.begin(), parts.end(), [](const auto& a, const auto& b) { return a.size() > b.size(); });
  for (const std::string& part : parts) {
    for (std::size_t at; (at = text.find(part)) != std::string::npos;) text.erase(at, part.size());
  }
  return text.size();
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

// Takes the longest piece out that many people have, or that is of the name; false when there is none.
bool take_piece(std::string& text, const std::vector<std::string>& own, const CommonPasswords& many_have) {
  constexpr std::size_t least = 5;
  for (std::size_t size = text.size(); size >= 3; --size) {
    for (std::size_t at = 0; at + size <= text.size(); ++at) {
      const std::string_view piece = std::string_view(text).substr(at, size);
      if (std::find(own.begin(), own.end(), piece) == own.end() && (size < least || !many_have.has(piece))) continue;
      text.erase(at, size);
      return true;
    }
  }
  return false;
}

// One or two such pieces and hardly more beside them than a year and a mark.
bool of_common_pieces(std::string text, const std::string& name, const CommonPasswords& many_have) {
  std::vector<std::string> own;
  std::istringstream words(name);
  for (std::string word; words >> word;) own.push_back(word);
  std::erase(text, ' ');
  if (!take_piece(text, own, many_have)) return false;
  take_piece(text, own, many_have);
  constexpr std::ptrdiff_t letters_most = 2, others_most = 6;
  const auto letters = std::count_if(text.begin(), text.end(), is_letter);
  return letters <= letters_most && std::ssize(text) - letters <= others_most;
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
  constexpr std::size_t uncommon_least = 5;
  if (std::set<char>(key.begin(), key.end()).size() < different_least || key == own || key == own + own ||
      uncommon(key) < uncommon_least || of_common_pieces(key, own, rules.common))
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
