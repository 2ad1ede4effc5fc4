#include "strandline/salon/diary.h"

#include <algorithm>
#include <tuple>

#include "members.h"
#include "read_on.h"

namespace strandline::salon {

namespace {

using wire::Booking, wire::BookingKind, wire::BookingState, wire::TestBefore;

constexpr const char* booking_kind = "booking";
constexpr std::int64_t s_per_min = 60, s_per_h = 3600, s_per_day = 86400;

tl::unexpected<Problems> one(const char* code, const char* path, const char* key, std::string value) {
  Problem problem{code, path, {}};
  problem.params[key] = std::move(value);
  return tl::unexpected(Problems{std::move(problem)});
}

std::int64_t start_of(const Booking& b) { return wire::seconds_of(b.starts_at).value_or(0); }
std::int64_t end_of(const Booking& b) { return start_of(b) + static_cast<std::int64_t>(b.minutes * s_per_min); }
bool stands(const Booking& b) { return b.state == BookingState::booked || b.state == BookingState::came; }

struct Stretch {
  std::int64_t from, until;
};

// In which hands are needed; so much longer the one before may take in a pause.
std::vector<Stretch> hands_on(const Booking& b, std::int64_t late) {
  std::vector<Stretch> out;
  std::int64_t from = start_of(b);
  const std::int64_t start = from;
  for (const wire::HandsOff& off : b.hands_off) {
    const auto off_from = start + static_cast<std::int64_t>(off.from_min * s_per_min) + late;
    const auto off_until = start + static_cast<std::int64_t>(off.until_min * s_per_min);
    if (off_until <= off_from) continue;
    out.push_back({from, off_from});
    from = off_until;
  }
  out.push_back({from, end_of(b)});
  return out;
}

bool meet(const std::vector<Stretch>& a, const std::vector<Stretch>& b) {
  return std::any_of(a.begin(), a.end(), [&](const Stretch& x) {
    return std::any_of(b.begin(), b.end(), [&](const Stretch& y) { return x.from < y.until && y.from < x.until; });
  });
}

// The later one works in the pauses of the earlier one, which may run late.
bool clash(const Booking& a, const Booking& b, std::int64_t late) {
  const bool a_first = start_of(a) <= start_of(b);
  return meet(hands_on(a_first ? a : b, late), hands_on(a_first ? b : a, 0));
}

}  // namespace

Result<void> Diary::catch_up() {
  std::int64_t damaged = 0;
  const auto read = read_on(world_, {.stream = "", .key = "", .kind = booking_kind}, read_,
                            [&](const store::Fact& fact, const wire::Json& body) {
                              if (body.is_null()) {
                                known_.erase(fact.stream);
                                return;
                              }
                              auto booking = wire::read_booking(body, "");
                              if (!booking) {
                                damaged = fact.store_seq;
                                return;
                              }
                              const auto about = wire::parse(fact.about);
                              const std::int64_t from = start_of(*booking), until = end_of(*booking);
                              known_[fact.stream] = {{fact.stream, fact.seq, fact.made_at,
                                                      about ? text_at(*about, "by") : "", std::move(*booking)},
                                                     from,
                                                     until,
                                                     fact.id};
                            });
  // Whoever was erased since is gone from memory too.
  const auto erased =
      read_on(world_, {.stream = "", .key = "", .kind = "client.erased"}, erased_read_,
              [&](const store::Fact& fact, const wire::Json&) {
                std::erase_if(known_, [&](const auto& one) { return one.second.booked.booking.person == fact.stream; });
                again_.erase(fact.stream);
              });
  if (!erased) return erased;
  if (read && damaged != 0) return problem_of({"store_damaged", "entry " + std::to_string(damaged), damaged});
  return read;
}

std::vector<const Diary::Known*> Diary::in_order() const {
  std::vector<const Known*> out;
  out.reserve(known_.size());
  for (const auto& [id, known] : known_) out.push_back(&known);
  std::sort(out.begin(), out.end(), [](const Known* a, const Known* b) {
    return std::tie(a->from, a->booked.id) < std::tie(b->from, b->booked.id);
  });
  return out;
}

Result<std::vector<DiaryLine>> Diary::between(const std::string& from, const std::string& until) {
  const auto first = wire::seconds_of(from), last = wire::seconds_of(until);
  if (!first) return one("bad_request", "", "what", "from");
  if (!last || *last <= *first || *last - *first > kDaysMost * s_per_day)
    return one("bad_request", "", "what", "until");
  const std::scoped_lock held(lock_);
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  std::vector<DiaryLine> out;
  for (const Known* known : in_order()) {
    if (known->from < *last && known->until > *first) out.push_back(known->booked);
  }
  return out;
}

Result<DiaryLine> Diary::open(const std::string& id) {
  const std::scoped_lock held(lock_);
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  const auto found = known_.find(id);
  if (found == known_.end()) return one("booking_not_found", "", "id", id);
  return found->second.booked;
}

Result<void> Diary::hour_is_free(const std::string& id, const Booking& booking) const {
  for (const auto& [other, known] : known_) {
    const Booking& theirs = known.booked.booking;
    if (other == id || !stands(theirs) || theirs.with != booking.with) continue;
    if (!clash(booking, theirs, rules_.late_min * s_per_min)) continue;
    return tl::unexpected(
        Problems{{"hour_taken", "/booking/starts_at", {{"id", other}, {"starts_at", theirs.starts_at}}}});
  }
  return {};
}

Result<void> Diary::test_in_time(const std::string& id, const Booking& booking) const {
  const std::int64_t lead = rules_.test_lead_h * s_per_h, start = start_of(booking);
  const auto too_late = [&](std::int64_t test, std::int64_t colour) { return test + lead > colour; };
  if (booking.kind == BookingKind::test) {
    for (const auto& [other, known] : known_) {
      const Booking& colour = known.booked.booking;
      if (colour.test_booking == id && colour.state == BookingState::booked && too_late(start, known.from))
        return one("test_too_late", "/booking/starts_at", "until", wire::instant_of(known.from - lead));
    }
    return {};
  }
  if (booking.kind != BookingKind::colour || booking.test != TestBefore::needed) return {};
  if (booking.test_booking.empty()) {
    const auto now = wire::seconds_of(world_.now()).value_or(0);
    if (start >= now + lead) return {};
    return one("test_too_soon", "/booking/starts_at", "from", wire::instant_of(now + lead));
  }
  const auto found = known_.find(booking.test_booking);
  if (found == known_.end() || found->second.booked.booking.kind != BookingKind::test)
    return one("not_a_test", "/booking/test_booking", "id", booking.test_booking);
  const Known& test = found->second;
  if (stands(test.booked.booking) && too_late(test.from, start))
    return one("test_too_late", "/booking/starts_at", "until", wire::instant_of(start - lead));
  return {};
}

Result<DiaryLine> Diary::save(const wire::Json& asked, const std::string& by) {
  if (!asked.is_object()) return one("wrong_type", "", "expected", "object");
  for (const auto& [key, value] : asked.items()) {
    const bool fits = key == "seq"       ? value.is_number_integer()
                      : key == "beside"  ? value.is_boolean()
                      : key == "booking" ? value.is_object()
                                         : value.is_string();
    if (key != "id" && key != "entry" && key != "seq" && key != "beside" && key != "booking")
      return one("unknown_key", "", "key", key);
    if (!fits) return one("wrong_type", wire::pointer("", key).c_str(), "expected", key);
  }
  for (const char* key : {"id", "entry", "seq", "booking"}) {
    if (!asked.contains(key)) return one("missing_key", "", "key", key);
  }
  const std::string id = text_at(asked, "id"), entry = text_at(asked, "entry");
  for (const auto& [key, value] : {std::pair("/id", id), std::pair("/entry", entry)}) {
    if (value.empty() || !id_for(world_, value)) return one("not_an_id", key, "id", value);
  }
  auto booking = wire::read_booking(asked["booking"], "/booking");
  if (!booking) return tl::unexpected(booking.error());

  const std::scoped_lock held(lock_);
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  const auto before = known_.find(id);
  const std::int64_t seen = asked["seq"].get<std::int64_t>(),
                     newest = before == known_.end() ? 0 : before->second.booked.seq;
  if (before != known_.end() && before->second.entry == entry) return before->second.booked;
  if (seen != newest) return one("booking_changed_elsewhere", "", "seq", std::to_string(newest));
  const auto as_before = [&](const Booking& old) {
    return old.starts_at == booking->starts_at && old.kind == booking->kind && old.test == booking->test &&
           old.test_booking == booking->test_booking;
  };
  if (stands(*booking)) {
    if (before == known_.end() || !as_before(before->second.booked.booking)) {
      if (const auto timely = test_in_time(id, *booking); !timely) return tl::unexpected(timely.error());
    }
    if (!asked.value("beside", false)) {
      if (const auto is_free = hour_is_free(id, *booking); !is_free) return tl::unexpected(is_free.error());
    }
  }
  wire::Json about = wire::Json::object();
  if (!booking->person.empty()) about["person"] = booking->person;
  if (!by.empty()) about["by"] = by;
  const auto kept = world_.store->append({.id = entry,
                                          .stream = id,
                                          .after_seq = newest,
                                          .made_at = world_.now(),
                                          .kind = booking_kind,
                                          .body = wire::print(asked["booking"]),
                                          .key = booking->person.empty() ? id : booking->person,
                                          .about = wire::print(about)});
  if (!kept) return problem_of(kept.error());
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  return known_.at(id).booked;
}

Result<std::vector<FreeStart>> Diary::free_starts(const FreeAsked& asked) {
  const auto first = wire::seconds_of(asked.from), last = wire::seconds_of(asked.until);
  if (!first) return one("bad_request", "", "what", "from");
  if (!last || *last <= *first || *last - *first > kDaysMost * s_per_day)
    return one("bad_request", "", "what", "until");
  constexpr double shortest = 5, longest = 1440;
  if (!(asked.minutes >= shortest && asked.minutes <= longest)) return one("bad_request", "", "what", "minutes");
  const std::scoped_lock held(lock_);
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  std::vector<const Known*> theirs;
  for (const Known* known : in_order()) {
    const Booking& b = known->booked.booking;
    if (stands(b) && b.with == asked.with && known->from < *last && known->until > *first) theirs.push_back(known);
  }
  const std::int64_t grid = rules_.grid_min * s_per_min, late = rules_.late_min * s_per_min;
  Booking wanted;
  wanted.minutes = asked.minutes;
  std::vector<FreeStart> out;
  const auto length = static_cast<std::int64_t>(asked.minutes * s_per_min);
  for (std::int64_t at = (*first + grid - 1) / grid * grid; at + length <= *last; at += grid) {
    wanted.starts_at = wire::instant_of(at);
    std::string inside;
    const bool taken = std::any_of(theirs.begin(), theirs.end(), [&](const Known* known) {
      if (known->from < at + length && known->until > at) inside = known->booked.id;
      return clash(wanted, known->booked.booking, late);
    });
    if (!taken) out.push_back({wanted.starts_at, inside});
  }
  return out;
}

Result<std::vector<DueTest>> Diary::tests_due() {
  const std::scoped_lock held(lock_);
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  const auto now = wire::seconds_of(world_.now()).value_or(0);
  const std::int64_t lead = rules_.test_lead_h * s_per_h;
  std::unordered_map<std::string, std::string> waits;  // a test, and the colour that needs it
  std::vector<DueTest> out;
  for (const Known* known : in_order()) {
    const Booking& b = known->booked.booking;
    if (b.kind != BookingKind::colour || b.test != TestBefore::needed || b.state != BookingState::booked) continue;
    if (known->until < now) continue;
    const auto test = known_.find(b.test_booking);
    if (test != known_.end() && stands(test->second.booked.booking)) {
      waits[b.test_booking] = known->booked.id;
    } else {
      out.push_back({TestDue::to_make, wire::instant_of(known->from - lead), known->booked.id, known->booked});
    }
  }
  for (const Known* known : in_order()) {
    const Booking& b = known->booked.booking;
    if (b.kind != BookingKind::test || b.state != BookingState::came || b.read || known->from + lead > now) continue;
    const auto colour = waits.find(known->booked.id);
    out.push_back({TestDue::to_read, wire::instant_of(known->from + lead),
                   colour == waits.end() ? std::string() : colour->second, known->booked});
  }
  return out;
}

Result<void> Diary::catch_up_on_people() {
  const auto again =
      read_on(world_, {.stream = "", .key = "", .kind = "rebooked"}, again_read_,
              [&](const store::Fact& fact, const wire::Json& body) {
                const auto about = wire::parse(fact.about);
                const std::string person = about ? text_at(*about, "person") : "";
                if (body.is_null() || person.empty()) return;
                const std::string day = text_at(body, "day");
                again_[person] = {fact.stream, day.empty() ? text_at(body, "until") : day, fact.store_seq};
              });
  if (!again) return again;
  return read_on(
      world_, {.stream = "", .key = "", .kind = "client.seen"}, seen_read_,
      [&](const store::Fact& fact, const wire::Json& body) {
        const auto found = again_.find(fact.stream);
        if (found == again_.end()) return;
        if (body.is_null() || (text_at(body, "visit") != found->second.visit && fact.store_seq > found->second.told))
          again_.erase(found);
      });
}

Result<std::vector<DuePerson>> Diary::people_due(const std::string& day) {
  const auto today = wire::seconds_of(day + "T00:00:00Z");
  if (!today) return one("bad_request", "", "what", "day");
  const std::scoped_lock held(lock_);
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  if (const auto read = catch_up_on_people(); !read) return tl::unexpected(read.error());
  std::unordered_map<std::string, bool> booked;
  for (const auto& [id, known] : known_) {
    if (stands(known.booked.booking) && known.until >= *today) booked[known.booked.booking.person] = true;
  }
  std::vector<DuePerson> out;
  for (const auto& [person, again] : again_) {
    const auto due = wire::seconds_of(again.due + "T00:00:00Z");
    if (due && *due + rules_.call_days * s_per_day <= *today && !booked.contains(person))
      out.push_back({person, again.due, again.visit});
  }
  std::sort(out.begin(), out.end(), [](const DuePerson& a, const DuePerson& b) {
    return std::tie(a.due, a.person) < std::tie(b.due, b.person);
  });
  return out;
}

}  // namespace strandline::salon
