#include "src/print/text.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <utility>

#include "strandline/wire/json.h"

namespace strandline::cli {

namespace {

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

// Bytes that the first character says it has, at most as many as there are.
std::size_t bytes_of_character(std::string_view text) {
  const auto first = static_cast<unsigned char>(text[0]);
  const std::size_t said = first < 0xC0 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  return std::min(said, text.size());
}

char32_t code_of(std::string_view character) {
  char32_t code = static_cast<unsigned char>(character[0]);
  if (character.size() > 1) code &= 0xFFu >> (character.size() + 1);
  for (const char c : character.substr(1)) code = code << 6 | (static_cast<unsigned char>(c) & 0x3F);
  return code;
}

// Controls, marks of direction, line ends and characters without a picture (Unicode 15, general categories Cc, Zl, Zp
// and those of Cf that no script needs to be written; the joiners U+200C and U+200D are needed).
bool turns_or_hides(char32_t code) {
  constexpr std::pair<char32_t, char32_t> ranges[] = {
      {0x00, 0x1F},     {0x7F, 0x9F},     {0x61C, 0x61C},   {0x200B, 0x200B}, {0x200E, 0x200F},
      {0x2028, 0x202E}, {0x2060, 0x206F}, {0xFEFF, 0xFEFF}, {0xFFF9, 0xFFFB}, {0xE0000, 0xE007F}};
  return std::any_of(std::begin(ranges), std::end(ranges),
                     [&](const auto& range) { return code >= range.first && code <= range.second; });
}

}  // namespace

std::size_t width(std::string_view text) {
  std::size_t columns = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\x1b') {
      while (i < text.size() && text[i] != 'm') ++i;
    } else if (!continues(text[i])) {
      ++columns;
    }
  }
  return columns;
}

std::string printable(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t bytes = bytes_of_character(text.substr(i));
    const std::string_view character = text.substr(i, bytes);
    char shown[16] = "";
    if (wire::find_invalid_utf8(character) != std::string_view::npos) {
      std::snprintf(shown, sizeof shown, "<0x%02X>", static_cast<unsigned char>(text[i]));
    } else if (const char32_t code = code_of(character); turns_or_hides(code)) {
      std::snprintf(shown, sizeof shown, "<U+%04X>", static_cast<unsigned>(code));
    }
    const bool as_it_is = shown[0] == '\0';
    out += as_it_is ? character : std::string_view(shown);
    i += as_it_is || bytes == 1 || shown[1] == 'U' ? bytes : 1;
  }
  return out;
}

std::string number(double value, int decimals) {
  char buffer[64];
  std::snprintf(buffer, sizeof buffer, "%.*f", decimals, value);
  std::string out = buffer;
  if (out.find('.') != std::string::npos) {
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

std::string signed_number(double value, int decimals) {
  const std::string out = number(value, decimals);
  return out == "0" || out.front() == '-' ? out : "+" + out;
}

std::string percent(double share) { return number(100 * share, 0) + " %"; }

std::string minutes(double value) {
  const long total = std::lround(value);
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%ld:%02ld", total / 60, total % 60);
  return buffer;
}

std::string padded(std::string_view text, std::size_t columns, bool right) {
  const std::size_t used = width(text);
  const std::string space(columns > used ? columns - used : 0, ' ');
  return right ? space + std::string(text) : std::string(text) + space;
}

}  // namespace strandline::cli
