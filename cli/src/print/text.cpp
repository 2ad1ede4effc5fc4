#include "src/print/text.h"

#include <cmath>
#include <cstdio>

namespace strandline::cli {

namespace {

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

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
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    const bool c1 = c == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0;
    if (c < 0x20 || c == 0x7F || c1) {
      out += "?";
      i += c1;
    } else {
      out += text[i];
    }
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
