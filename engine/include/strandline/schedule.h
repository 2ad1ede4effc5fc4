// `schedule`: one clock for one visit. Minutes count from "hands on" (0 = the first hand on the client or the
// scale).
//
// Requires: every application names a bowl of the request; minutes are finite and 0 or more. Gives the
// earliest plan that keeps every clock, or the problems that say which clock breaks and by how much. Pure and
// deterministic; the order of the lists in the request does not change the plan (ids must be unique: they
// break ties).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/head.h"
#include "strandline/result.h"
#include "strandline/shelf.h"

namespace strandline {

// ---- What goes in
// ------------------------------------------------------------------------------------------------

struct Duration {
  double mean = 0;  // minutes
  double sd = 0;    // minutes; 0 = taken as exact
};

struct ScheduledBowl {
  std::string id;     // unique
  std::string label;  // "A", "B" …
  ProductClass cls = ProductClass::permanent;
  Duration mix;          // weighing and mixing, hands needed
  double mix_life = 60;  // minutes from the start of mixing to the last touch with this mix
};

enum class SpanKind { regrowth, mids, ends };

// One zone or packet that gets its colour in one go.
struct Application {
  std::string id;  // unique
  std::string zone;
  std::string bowl;
  AreaKind area = AreaKind::other;
  SpanKind span = SpanKind::regrowth;
  bool touches_scalp = true;
  bool packet = false;     // wrapped by itself: may leave before the basin time
  bool woven = false;      // strands taken up before anything goes between them
  Duration apply;          // at this colourist's own pace
  double min = 0;          // shortest development, from the LAST touch
  double target = 0;       // what the prediction was made for, from the last touch; min <= target
  double max = 0;          // longest development, from the FIRST touch
  double white_share = 0;  // 0…1
  double resistance = 0;   // 0…1
  double porosity = 1;     // 0…3
  bool lightening = false;
  bool lift = false;  // a tint that lifts natural hair: away from the scalp first
  int parting = 0;    // place among the partings of its area and span; equal = free
};

enum class Skill { prepare, mix, apply, check, basin, finish };

struct Person {
  std::string id;  // unique
  std::string role;
  std::vector<Skill> skills;
  double pace = 1;  // minutes of this person per minute of the colourist, for applying; above 0
  double from = 0;  // available from … until, minutes
  std::optional<double> until;
};

enum class TaskKind {
  prepare,
  mix,
  apply,
  check,
  remove_packet,
  emulsify,
  rinse,
  shampoo,
  tone,
  treat,
  dry,
  photograph
};

// What follows the development, in this order. Tasks at the basin run without a gap from the basin time on.
struct TailTask {
  TaskKind kind = TaskKind::rinse;
  Duration minutes;
  bool at_basin = true;
};

struct Window {
  double from = 0, until = 0;
};

enum class OrderForce { hard, soft };
enum class DevelopTo { minimum, target, target_if_possible };

// House policy; its numbers are data (knowledge/policy/schedule.json) and marked common practice there.
struct SchedulePolicy {
  OrderForce order = OrderForce::hard;
  double soft_order_minutes = 0;  // soft: minutes that one pair out of order may cost at most
  DevelopTo develop_to = DevelopTo::target_if_possible;
  double resistant_from = 0;            // resistance from which a zone starts first
  double porous_from = 0;               // porosity from which ends come last
  std::vector<AreaKind> cover_areas;    // first … last
  std::vector<AreaKind> lighten_areas;  // first … last
  Duration prepare;                     // gown, barrier, sections
  Duration remove_packet;
  double first_check = 0;  // lightener: first look, minutes from its first touch
  double check_every_min = 0, check_every_max = 0;
  double check_minutes = 0;
  double late_tolerance = 0;  // without a leave-by time, "on time" = within this of the plan
  int sample_points = 0;
  long node_limit = 0;  // of the search; reaching it is told in Timeline::proven
};

struct ScheduleRequest {
  std::vector<ScheduledBowl> bowls;
  std::vector<Application> applications;
  std::vector<Person> people;
  std::vector<TailTask> tail;
  std::vector<Window> basin_taken;
  std::optional<double> leave_by;
  SchedulePolicy policy;
};

// ---- What comes out
// ----------------------------------------------------------------------------------------------

struct TimelineTask {
  std::string id;  // "apply:crown/regrowth", "mix:A:1" …
  TaskKind kind = TaskKind::prepare;
  std::string who;   // person id
  std::string bowl;  // bowl id, empty where none
  int mix = 0;       // which mix of that bowl, 1 …
  std::string application, zone;
  double start_min = 0, end_min = 0;
  // With the same basin time, people and order the task may start anywhere in [earliest, latest].
  double earliest = 0, latest = 0;
  std::string reason;    // code
  std::string during;    // checks: the task beside which the look is taken, when nobody is free
  double needs_min = 0;  // to apply: minutes the zone needs from its last touch
};

// Both clocks of one application.
struct Development {
  std::string application, zone, bowl;
  double first_touch = 0, last_touch = 0;
  double min_until = 0;  // last touch + min
  double target_at = 0;  // last touch + target
  double max_until = 0;  // first touch + max
  double leaves_at = 0;  // basin time, or when its packet is taken out
};

struct OrderStep {
  std::string application, zone, who;
  std::string reason;         // code of the house rule that puts it here
  bool out_of_order = false;  // soft order: placed against the house rule to save time
  double needs_min = 0;       // minutes it needs from its last touch
};

// One process of the visit: all that is on the hair together until it is rinsed out.
struct TimelineStep {
  int step = 1;
  double from_min = 0, basin_min = 0, until_min = 0;
};

struct Timeline {
  std::vector<TimelineTask> tasks;  // by start; of a later step with "step 2: " … before the id
  std::vector<Development> developments;
  std::vector<OrderStep> order;
  std::vector<TimelineStep> steps;             // at least one, in order
  double basin_min = 0;                        // the one basin time; of the last step
  double finish_min = 0;                       // end of the last task
  DevelopTo developed_to = DevelopTo::target;  // minimum: less than the target, at least the shortest
  double finish_mean = 0, finish_sd = 0;       // minutes, from the spreads of the durations
  double on_time_probability = 0;              // 0…1: by leave_by, or within late_tolerance of finish_min
  double clocks_probability = 0;               // 0…1: no maximum is passed when durations vary
  bool proven = true;  // earliest within the order policy; false when node_limit stopped the search
  long nodes = 0;
};

// Problem codes: clock_breaks {application, minutes, second_pair_of_hands, other_order, shorter_development},
// development_window_too_short, mix_life_too_short, nobody_can, basin_taken, leaves_too_late, and those of
// bad input.
Result<Timeline> schedule(const ScheduleRequest& request);

}  // namespace strandline
