// Days between civil dates.
#pragma once

#include <charconv>
#include <chrono>
#include <optional>
#include <string_view>

namespace strandline::salon {

// Days since 1970-01-01 of a civil date, or of the date an instant begins with; nothing where it is none.
inline std::optional<int> day_of(std::string_view text) {
  const auto number = [&](std::size_t at, std::size_t size) -> std::optional<int> {
    int out = 0;
    if (text.size() < at + size) return std::nullopt;
    const char* end = text.data() + at + size;
    const auto read = std::from_chars(text.data() + at, end, out);
    return read.ec == std::errc{} && read.ptr == end ? std::optional(out) : std::nullopt;
  };
  const auto y = number(0, 4), m = number(5, 2), d = number(8, 2);
  if (!y || !m || !d) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year{*y}, std::chrono::month{static_cast<unsigned>(*m)},
                                         std::chrono::day{static_cast<unsigned>(*d)}};
  if (!date.ok()) return std::nullopt;
  return static_cast<int>(std::chrono::sys_days{date}.time_since_epoch().count());
}

}  // namespace strandline::salon
