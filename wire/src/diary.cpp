#include "strandline/wire/diary.h"

#include <charconv>
#include <chrono>
#include <cstdio>

#include "strandline/wire/diary_fields.h"

namespace strandline::wire {

std::optional<std::int64_t> seconds_of(const std::string& instant) {
  using namespace std::chrono;
  constexpr std::string_view shape = "0000-00-00T00:00:00Z";
  if (instant.size() != shape.size()) return std::nullopt;
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const bool digit = instant[i] >= '0' && instant[i] <= '9';
    if (shape[i] == '0' ? !digit : instant[i] != shape[i]) return std::nullopt;
  }
  const auto number = [&](std::size_t at, std::size_t digits) {
    int out = 0;
    std::from_chars(instant.data() + at, instant.data() + at + digits, out);
    return out;
  };
  const auto two = [&](std::size_t at) { return static_cast<unsigned>(number(at, 2)); };
  const year_month_day date{year(number(0, 4)), month(two(5)), day(two(8))};
  constexpr unsigned hours_of_day = 24, of_hour = 60;
  if (!date.ok() || two(11) >= hours_of_day || two(14) >= of_hour || two(17) >= of_hour) return std::nullopt;
  const auto time = sys_days(date) + hours(two(11)) + minutes(two(14)) + seconds(two(17));
  return duration_cast<seconds>(time.time_since_epoch()).count();
}

std::string instant_of(std::int64_t seconds) {
  using namespace std::chrono;
  const sys_seconds at{std::chrono::seconds(seconds)};
  const auto midnight = floor<days>(at);
  const year_month_day date{midnight};
  const hh_mm_ss time{at - midnight};
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02u-%02uT%02d:%02d:%02dZ", static_cast<int>(date.year()),
                static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()),
                static_cast<int>(time.seconds().count()));
  return text.data();
}

Result<Booking> read_booking(const Json& body, const std::string& path) {
  Problems problems;
  const At at(problems, path);
  Booking out;
  decode(body, out, at);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  if (!seconds_of(out.starts_at)) at.key("starts_at").problem("bad_instant", {{"text", out.starts_at}});
  double last = 0;
  for (std::size_t i = 0; i < out.hands_off.size(); ++i) {
    const HandsOff& off = out.hands_off[i];
    if (off.from_min < last || off.until_min <= off.from_min || off.until_min > out.minutes) {
      at.key("hands_off")
          .item(i)
          .problem("minutes_range", {{"from", number_text(off.from_min)}, {"until", number_text(off.until_min)}});
    }
    last = off.until_min;
  }
  if (out.price_to < out.price_from) {
    at.key("price_to")
        .problem("price_range", {{"from", number_text(out.price_from)}, {"until", number_text(out.price_to)}});
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

}  // namespace strandline::wire
