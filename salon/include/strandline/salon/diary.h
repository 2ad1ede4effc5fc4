// The diary: planned visits and tests, each a stream of facts with the whole line at every change.
//
// Times are instants; where a day begins is the asker's to say, so that nights on which clocks are changed and salons
// that close after midnight need no rule of their own.
#pragma once

#include <mutex>
#include <unordered_map>

#include "strandline/salon/diary_rules.h"
#include "strandline/salon/world.h"
#include "strandline/wire/diary.h"

namespace strandline::salon {

struct DiaryLine {
  std::string id;
  std::int64_t seq = 0;
  std::string changed_at, by;
  wire::Booking booking;
};

// A time at which a visit could begin.
struct FreeStart {
  std::string starts_at;
  std::string inside;  // id of the booking whose hands-off minutes it would use; "" = nobody is there
};

enum class TestDue { to_make, to_read };
struct DueTest {
  TestDue due = TestDue::to_make;
  std::string since;   // UTC: from then on it can be read, or until then it has to be made
  std::string colour;  // id of the booking that waits for it; "" = none
  DiaryLine booked;    // of the test; where there is none yet, of the colour
};

// Somebody who was to come again by `due` (civil date) and was neither seen nor booked.
struct DuePerson {
  std::string person, due, visit;  // visit = the last one
};

struct FreeAsked {
  std::string from, until;  // UTC; at most kDaysMost days
  double minutes = 0;
  std::string with;
};

// May be used from many threads. Problems of all: those of the store; bad_request {what}; booking_not_found {id}.
class Diary {
 public:
  static constexpr int kDaysMost = 62;

  Diary(World world, const DiaryRules& rules) : world_(std::move(world)), rules_(rules) {}

  // Those of which a minute lies in [from, until), by their beginning; what was cancelled too.
  Result<std::vector<DiaryLine>> between(const std::string& from, const std::string& until);
  Result<DiaryLine> open(const std::string& id);
  // `asked` is {"id", "entry", "seq", "booking", "beside"?}: id and entry are the device's, seq the newest version it
  // has seen (0 = a new line); beside = the hands of an hour that is taken are shared knowingly. Handed in again under
  // the same entry it is answered as the first time. Problems: those of wire::read_booking · booking_changed_elsewhere
  // {seq} · hour_taken {id, starts_at} · test_too_soon {from} (colour that needs a test, before one could be read) ·
  // test_too_late {until} · not_a_test {id} · entry_id_taken {id}.
  Result<DiaryLine> save(const wire::Json& asked, const std::string& by = {});
  // Beginnings at which hands are free for all of it, by the grid of the house.
  Result<std::vector<FreeStart>> free_starts(const FreeAsked& asked);
  // Tests that are missing before a colour, or can be read and were not.
  Result<std::vector<DueTest>> tests_due();
  // Whose day passed a while before `day` (the civil date of today), longest ago first.
  Result<std::vector<DuePerson>> people_due(const std::string& day);
  const DiaryRules& rules() const { return rules_; }

 private:
  struct Known {
    DiaryLine booked;
    std::int64_t from = 0, until = 0;  // s
    std::string entry;
  };
  struct Again {
    std::string visit, due;
    std::int64_t told = 0;  // store_seq
  };
  // All of these require the lock.
  Result<void> catch_up();
  Result<void> catch_up_on_people();
  Result<void> hour_is_free(const std::string& id, const wire::Booking& booking) const;
  Result<void> test_in_time(const std::string& id, const wire::Booking& booking) const;
  std::vector<const Known*> in_order() const;

  World world_;
  const DiaryRules& rules_;
  std::mutex lock_;
  std::int64_t read_ = 0, erased_read_ = 0;  // store_seq
  std::unordered_map<std::string, Known> known_;
  std::int64_t again_read_ = 0, seen_read_ = 0;   // store_seq
  std::unordered_map<std::string, Again> again_;  // by person
};

}  // namespace strandline::salon
