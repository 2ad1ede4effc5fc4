// A partial plan laid backwards from the basin: time runs from the basin time into the past.
//
// For a given choice of hands and sequence every job is laid as close to the basin as the constraints allow.
// All constraints only ever push jobs further away, so the least solution is the best one for each of them at
// once: the shortest plan, and the shortest stay of every colour on the hair.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

#include "schedule/instance.h"

namespace strandline {

enum class JobKind : std::uint8_t { apply, mix, remove, prepare };

struct Job {
  JobKind kind = JobKind::apply;
  int person = 0;
  int what = 0;   // application or bowl
  int batch = 0;  // which mix, of all mixes of the plan
  int ticks = 0;
  int floor = 0;  // pushed away at least this far
  int end = 0;    // ticks before the basin time at which hands are free again
  int start() const { return end + ticks; }
};

struct Batch {
  int bowl = 0;
  int job = -1;             // its mix; -1 = not laid yet
  int last_touch = kNever;  // end of the use nearest to the basin
  int first_touch = 0;      // start of the use furthest from it
};

class Layout {
 public:
  // `basin`: ticks from "hands on" to the basin time; kNever = free, people are there throughout.
  Layout(const Instance& instance, int basin);

  // Each adds a job and settles all times; false = some constraint cannot hold or the plan passes `limit`.
  bool apply(int app, int person, int limit);
  bool mix(int bowl, int person, int limit);
  bool remove(int app, int person, int limit);
  bool prepare(int person, int limit);
  bool lay(const Job& job, int limit);  // the same as another layout did

  bool placed(int app) const { return mask_ >> app & 1; }
  bool removed(int app) const { return removal_[app] >= 0; }
  int open_batch(int bowl) const { return open_[bowl]; }
  std::uint32_t mask() const { return mask_; }
  std::uint32_t removals() const { return removals_; }
  int free_from(int person) const { return free_[person]; }
  int jobs_of(int person) const { return static_cast<int>(std::ranges::count(jobs_, person, &Job::person)); }
  int furthest() const { return furthest_; }            // start of the job furthest from the basin
  int first_application() const { return first_app_; }  // start of the application furthest from the basin
  int inversions() const { return inversions_; }
  int extras() const { return extras_; }  // mixes and single removals: fewer is better at equal time
  const std::vector<Job>& jobs() const { return jobs_; }
  const std::vector<Batch>& batches() const { return batches_; }

  // State for comparing two layouts with the same key: a layout whose numbers are all no larger, and that is
  // loose, can do whatever the other can.
  void signature(std::vector<int>& out) const;
  std::uint64_t key() const;
  // No relative clock (life of an open mix, stay of a removed packet) can bind in a plan shorter than
  // `limit`.
  bool loose(int limit) const;

 private:
  bool settle(int limit);
  bool sweep(int limit, bool& pushed);
  int lower_bound(const Job& job) const;
  bool push(int job, int floor);

  const Instance* instance_;
  int basin_;
  std::uint32_t mask_ = 0, removals_ = 0;  // applications placed; packets that leave singly
  int inversions_ = 0, extras_ = 0, furthest_ = 0, first_app_ = 0;
  std::array<int, kMaxPeople> free_{};
  std::array<std::int8_t, kMaxApplications> application_, removal_, open_;
  std::array<std::uint32_t, kMaxApplications> bound_{};  // the house order that this placement keeps
  std::vector<Job> jobs_;
  std::vector<Batch> batches_;
};

}  // namespace strandline
