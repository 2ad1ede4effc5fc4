// Keys of a line of the diary.
#pragma once

#include "strandline/wire/decode.h"
#include "strandline/wire/diary.h"
#include "strandline/wire/words.h"

namespace strandline::wire {

template <>
struct Words<BookingKind> {
  static constexpr std::string_view name = "BookingKind";
  static constexpr WordList<BookingKind, 3> list{
      {{BookingKind::colour, "colour"}, {BookingKind::test, "test"}, {BookingKind::other, "other"}}};
};

template <>
struct Words<BookingState> {
  static constexpr std::string_view name = "BookingState";
  static constexpr WordList<BookingState, 4> list{{{BookingState::booked, "booked"},
                                                   {BookingState::came, "came"},
                                                   {BookingState::missed, "missed"},
                                                   {BookingState::cancelled, "cancelled"}}};
};

template <>
struct Words<TestBefore> {
  static constexpr std::string_view name = "TestBefore";
  static constexpr WordList<TestBefore, 3> list{
      {{TestBefore::needed, "needed"}, {TestBefore::valid, "valid"}, {TestBefore::not_needed, "not_needed"}}};
};

inline constexpr Rules booking_minutes{.required = true, .min = 0, .max = 1440, .note = "minutes since its beginning"};
inline constexpr Rules booking_money{.min = 0, .max = 1e6};

template <>
struct Fields<HandsOff> {
  static constexpr std::string_view name = "HandsOff";
  static constexpr auto list = std::make_tuple(field("from_min", &HandsOff::from_min, booking_minutes),
                                               field("until_min", &HandsOff::until_min, booking_minutes));
};

template <>
struct Fields<ToTake> {
  static constexpr std::string_view name = "ToTake";
  static constexpr auto list =
      std::make_tuple(field("product", &ToTake::product, {.required = true, .max_length = 120}),
                      field("name", &ToTake::name, {.max_length = 200}),
                      field("grams", &ToTake::grams, {.required = true, .min = 0, .max = 2000, .note = "g"}));
};

template <>
struct Fields<Booking> {
  static constexpr std::string_view name = "Booking";
  using B = Booking;
  static constexpr auto list = std::make_tuple(
      field("starts_at", &B::starts_at, {.required = true, .max_length = 20, .note = "UTC, 2026-03-09T09:00:00Z"}),
      field("minutes", &B::minutes, {.required = true, .min = 5, .max = 1440, .note = "true minutes"}),
      field("hands_off", &B::hands_off, {.max_items = 20, .note = "no hand is needed, nothing must be watched"}),
      field("with", &B::with, {.max_length = 80, .note = "id of who does it; empty = whoever is there"}),
      field("client", &B::client, {.max_length = 120}), field("person", &B::person, {.max_length = 80}),
      field("contact", &B::contact, {.max_length = 200}), field("wish", &B::wish, {.max_length = 600}),
      field("born", &B::born, {.date = true, .note = "asked of the young only"}), field("kind", &B::kind),
      field("state", &B::state), field("test", &B::test),
      field("test_booking", &B::test_booking, {.max_length = 80, .note = "of the test before this colour"}),
      field("read", &B::read, {.note = "a test: what was seen is in its visit"}),
      field("price_from", &B::price_from, booking_money), field("price_to", &B::price_to, booking_money),
      field("deposit", &B::deposit, booking_money), field("currency", &B::currency, {.max_length = 8}),
      field("take", &B::take, {.max_items = 60, .note = "from the shelf"}),
      field("visit", &B::visit, {.max_length = 80, .note = "that came of it"}));
};

}  // namespace strandline::wire
