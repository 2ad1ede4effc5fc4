// A request in the form the search works on: sorted by id, time in ticks.
#pragma once

#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include "schedule/order.h"
#include "strandline/schedule.h"

namespace strandline {

// Plans are laid on quarters of a minute: durations to the nearest, minima up, maxima down.
inline constexpr double kTicksPerMinute = 4;
inline constexpr int kNever = std::numeric_limits<int>::max() / 4;
inline constexpr int kMaxApplications = 24;
inline constexpr int kMaxPeople = 8;

int nearest_ticks(double minutes);
int ticks_up(double minutes);
int ticks_down(double minutes);
inline double minutes_of(int ticks) { return ticks / kTicksPerMinute; }
// As it is told: rounded up, so that a limit moved by as much is enough.
inline std::string whole_minutes(double minutes) { return std::to_string(std::lround(std::ceil(minutes - 1e-9))); }

struct Instance {
  struct App {
    int bowl = 0;
    std::array<int, kMaxPeople> apply{};  // ticks by person, kNever = cannot
    int fastest = 0;                      // least of them
    int develop = 0;                      // from the last touch
    int max = 0;                          // from the first touch
    bool packet = false;
    std::uint32_t later = 0;  // placed no later in time than these
    int twin = -1;            // the next application that differs in nothing but its id
    // Packets that come no earlier and may change places with this one: they leave in the order they were
    // applied.
    std::uint32_t queue = 0;
  };
  struct Mix {
    int minutes = 0, life = 0;
  };
  struct Hands {
    bool prepare = false, mix = false, apply = false, remove = false;
    int from = 0, until = kNever;
  };

  ScheduleRequest request;  // sorted by id
  std::vector<OrderRule> rules;
  std::vector<App> apps;
  std::vector<Mix> bowls;
  std::vector<Hands> people;
  int prepare = 0, remove = 0;
  bool soft = false;
  int soft_cost = 0;  // ticks per pair out of order
  long node_limit = 0;
};

// Requires a request that check_request accepts.
// `part` of the way from the shortest development to the target: 0 … 1.
Instance make_instance(const ScheduleRequest& request, double part);

// Every maximum longer by `ticks`.
Instance stretched(Instance instance, int ticks);

// The same visit in one fixed order: one of the two orders (lightening, cover) after the other, ties by id.
Instance in_sequence(Instance instance, bool lightening_first);

// The same visit with one person only to apply; the others still do the rest.
Instance applied_by(Instance instance, int person);

bool has(const Person& person, Skill skill);

Problems check_request(const ScheduleRequest& request);

}  // namespace strandline
