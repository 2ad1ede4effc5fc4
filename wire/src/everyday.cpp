#include "strandline/wire/everyday.h"

#include <array>
#include <cstdint>

namespace strandline::wire {

std::optional<std::string> bytes_of_base64(const std::string& text) {
  if (text.size() % 4 != 0) return std::nullopt;
  constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  constexpr std::uint8_t none = 255;
  std::array<std::uint8_t, 256> value{};
  value.fill(none);
  for (std::size_t i = 0; i < alphabet.size(); ++i)
    value[static_cast<std::uint8_t>(alphabet[i])] = static_cast<std::uint8_t>(i);
  const std::size_t padding = text.ends_with("==") ? 2 : text.ends_with('=') ? 1 : 0;
  std::string out;
  out.reserve(text.size() / 4 * 3);
  std::uint32_t bits = 0;
  int held = 0;
  for (std::size_t i = 0; i < text.size() - padding; ++i) {
    const std::uint8_t six = value[static_cast<std::uint8_t>(text[i])];
    if (six == none) return std::nullopt;
    bits = bits << 6 | six;
    held += 6;
    if (held < 8) continue;
    held -= 8;
    out += static_cast<char>(bits >> held & 0xff);
  }
  return out;
}

std::string photo_trouble(const std::string& bytes) {
  const auto at = [&](std::size_t i) { return i < bytes.size() ? static_cast<std::uint8_t>(bytes[i]) : 0; };
  constexpr int mark = 0xff, start = 0xd8, scan = 0xda, end = 0xd9, comment = 0xfe, app1 = 0xe1, app15 = 0xef;
  if (bytes.size() < 4 || at(0) != mark || at(1) != start) return "not_jpeg";
  // ISO/IEC 10918-1 annex B: segments of a marker, a length of two bytes that counts itself, and what it holds.
  std::size_t place = 2;
  while (place + 4 <= bytes.size()) {
    if (at(place) != mark) return "not_jpeg";
    const int kind = at(place + 1);
    if (kind == scan) {
      const std::size_t size = bytes.size();
      return at(size - 2) == mark && at(size - 1) == end ? "" : "cut_short";
    }
    // JFIF (APP0) and the colour profile (APP2) say nothing of place, time or camera.
    constexpr int app2 = 0xe2;
    if (kind == comment || (kind >= app1 && kind <= app15 && kind != app2)) return "metadata";
    const std::size_t length = static_cast<std::size_t>(at(place + 2)) << 8 | static_cast<std::size_t>(at(place + 3));
    if (length < 2) return "not_jpeg";
    place += 2 + length;
  }
  return "cut_short";
}

}  // namespace strandline::wire
