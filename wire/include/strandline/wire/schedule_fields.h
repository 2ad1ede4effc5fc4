// People and policy of the clock, and the timeline it answers.
#pragma once

#include "strandline/schedule.h"
#include "strandline/wire/encode.h"
#include "strandline/wire/words.h"

namespace strandline::wire {

template <>
struct Words<Skill> {
  static constexpr std::string_view name = "Skill";
  static constexpr WordList<Skill, 6> list{{{Skill::prepare, "prepare"},
                                            {Skill::mix, "mix"},
                                            {Skill::apply, "apply"},
                                            {Skill::check, "check"},
                                            {Skill::basin, "basin"},
                                            {Skill::finish, "finish"}}};
};

template <>
struct Words<TaskKind> {
  static constexpr std::string_view name = "TaskKind";
  static constexpr WordList<TaskKind, 12> list{{{TaskKind::prepare, "prepare"},
                                                {TaskKind::mix, "mix"},
                                                {TaskKind::apply, "apply"},
                                                {TaskKind::check, "check"},
                                                {TaskKind::remove_packet, "remove_packet"},
                                                {TaskKind::emulsify, "emulsify"},
                                                {TaskKind::rinse, "rinse"},
                                                {TaskKind::shampoo, "shampoo"},
                                                {TaskKind::tone, "tone"},
                                                {TaskKind::treat, "treat"},
                                                {TaskKind::dry, "dry"},
                                                {TaskKind::photograph, "photograph"}}};
};

template <>
struct Words<OrderForce> {
  static constexpr std::string_view name = "OrderForce";
  static constexpr WordList<OrderForce, 2> list{{{OrderForce::hard, "hard"}, {OrderForce::soft, "soft"}}};
};

template <>
struct Words<DevelopTo> {
  static constexpr std::string_view name = "DevelopTo";
  static constexpr WordList<DevelopTo, 3> list{{{DevelopTo::minimum, "minimum"},
                                                {DevelopTo::target, "target"},
                                                {DevelopTo::target_if_possible, "target_if_possible"}}};
};

inline constexpr Rules minutes_rules{.min = 0, .max = 1440, .note = "minutes"};

template <>
struct Fields<Duration> {
  static constexpr std::string_view name = "Duration";
  static constexpr auto list =
      std::make_tuple(field("mean", &Duration::mean, {.required = true, .min = 0, .max = 1440, .note = "minutes"}),
                      field("sd", &Duration::sd, minutes_rules));
};

template <>
struct Fields<Person> {
  static constexpr std::string_view name = "Person";
  static constexpr auto list = std::make_tuple(
      field("id", &Person::id, {.required = true, .max_length = 60}), field("role", &Person::role, {.max_length = 60}),
      field("skills", &Person::skills, {.max_items = 6}),
      field("pace", &Person::pace, {.min = 0.1, .max = 10, .note = "minutes per minute of the colourist, applying"}),
      field("from", &Person::from, minutes_rules), field("until", &Person::until, minutes_rules));
};

template <>
struct Fields<SchedulePolicy> {
  static constexpr std::string_view name = "SchedulePolicy";
  using P = SchedulePolicy;
  static constexpr auto list = std::make_tuple(
      field("order", &P::order), field("soft_order_minutes", &P::soft_order_minutes, minutes_rules),
      field("develop_to", &P::develop_to), field("resistant_from", &P::resistant_from, {.min = 0, .max = 1}),
      field("porous_from", &P::porous_from, {.min = 0, .max = 3}),
      field("cover_areas", &P::cover_areas, {.max_items = 7, .note = "first to last"}),
      field("lighten_areas", &P::lighten_areas, {.max_items = 7, .note = "first to last"}),
      field("prepare", &P::prepare), field("remove_packet", &P::remove_packet),
      field("first_check", &P::first_check, minutes_rules),
      field("check_every_min", &P::check_every_min, minutes_rules),
      field("check_every_max", &P::check_every_max, minutes_rules),
      field("check_minutes", &P::check_minutes, minutes_rules),
      field("late_tolerance", &P::late_tolerance, minutes_rules),
      field("sample_points", &P::sample_points, {.min = 0, .max = 100000}),
      field("node_limit", &P::node_limit, {.min = 0, .max = 1e9}));
};

inline constexpr Rules told{.required = true};

template <>
struct Fields<TimelineTask> {
  static constexpr std::string_view name = "TimelineTask";
  using T = TimelineTask;
  static constexpr auto list = std::make_tuple(
      field("id", &T::id, told), field("kind", &T::kind, told), field("who", &T::who, told),
      field("bowl", &T::bowl, told), field("mix", &T::mix, told), field("application", &T::application, told),
      field("zone", &T::zone, told), field("start_min", &T::start_min, told), field("end_min", &T::end_min, told),
      field("earliest", &T::earliest, told), field("latest", &T::latest, told), field("reason", &T::reason, told),
      field("during", &T::during, told), field("needs_min", &T::needs_min, told));
};

template <>
struct Fields<Development> {
  static constexpr std::string_view name = "Development";
  using D = Development;
  static constexpr auto list = std::make_tuple(
      field("application", &D::application, told), field("zone", &D::zone, told), field("bowl", &D::bowl, told),
      field("first_touch", &D::first_touch, told), field("last_touch", &D::last_touch, told),
      field("min_until", &D::min_until, told), field("target_at", &D::target_at, told),
      field("max_until", &D::max_until, told), field("leaves_at", &D::leaves_at, told));
};

template <>
struct Fields<OrderStep> {
  static constexpr std::string_view name = "OrderStep";
  using O = OrderStep;
  static constexpr auto list =
      std::make_tuple(field("application", &O::application, told), field("zone", &O::zone, told),
                      field("who", &O::who, told), field("reason", &O::reason, told),
                      field("out_of_order", &O::out_of_order, told), field("needs_min", &O::needs_min, told));
};

template <>
struct Fields<TimelineStep> {
  static constexpr std::string_view name = "TimelineStep";
  using S = TimelineStep;
  static constexpr auto list =
      std::make_tuple(field("step", &S::step, told), field("from_min", &S::from_min, told),
                      field("basin_min", &S::basin_min, told), field("until_min", &S::until_min, told));
};

template <>
struct Fields<Timeline> {
  static constexpr std::string_view name = "Timeline";
  using T = Timeline;
  static constexpr auto list = std::make_tuple(
      field("tasks", &T::tasks, told), field("developments", &T::developments, told), field("order", &T::order, told),
      field("steps", &T::steps, told), field("basin_min", &T::basin_min, told),
      field("finish_min", &T::finish_min, told), field("developed_to", &T::developed_to, told),
      field("finish_mean", &T::finish_mean, told), field("finish_sd", &T::finish_sd, told),
      field("on_time_probability", &T::on_time_probability, told),
      field("clocks_probability", &T::clocks_probability, told), field("proven", &T::proven, told),
      field("nodes", &T::nodes, told));
};

}  // namespace strandline::wire
