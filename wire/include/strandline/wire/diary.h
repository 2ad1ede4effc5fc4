// A line of the diary, as its facts hold it: the whole of it each time it changes, so that what it was is never lost.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "strandline/wire/json.h"

namespace strandline::wire {

enum class BookingKind { colour, test, other };  // a test of the skin is a visit of its own
enum class BookingState { booked, came, missed, cancelled };
// Before colour on the skin: one that was read may still hold, or the wish needs none.
enum class TestBefore { needed, valid, not_needed };

// Minutes after its beginning in which no hand is needed, and nothing lies on the hair that must be watched.
struct HandsOff {
  double from_min = 0, until_min = 0;
};

struct ToTake {
  std::string product, name;
  double grams = 0;
};

struct Booking {
  std::string starts_at;  // UTC, 2026-03-09T09:00:00Z: no night of the year has it twice
  double minutes = 0;     // true ones, also over a night on which clocks are changed
  std::vector<HandsOff> hands_off;
  std::string with;            // id of who does it; empty = whoever is there
  std::string client, person;  // a name or none; the id of a client who is known
  std::string contact, wish;
  std::string born;  // civil date, asked of the young only
  BookingKind kind = BookingKind::colour;
  BookingState state = BookingState::booked;
  TestBefore test = TestBefore::needed;
  std::string test_booking;  // id of the test before this colour
  bool read = false;         // of a test: what was seen is in its visit
  double price_from = 0, price_to = 0, deposit = 0;
  std::string currency;
  std::vector<ToTake> take;  // from the shelf
  std::string visit;         // that came of it
};

// UTC to the second, "2026-03-09T09:00:00Z", as seconds since 1970; nothing = it is no such instant.
std::optional<std::int64_t> seconds_of(const std::string& instant);
std::string instant_of(std::int64_t seconds);

// Problems beside those of the codec: bad_instant {text} · minutes_range {from, until} · price_range {from, until}.
Result<Booking> read_booking(const Json& body, const std::string& path);

}  // namespace strandline::wire
