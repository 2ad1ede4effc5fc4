// The rest of a visit document: aims, bowls, policy, and what is named instead of written out.
#pragma once

#include "strandline/wire/document.h"
#include "strandline/wire/head_fields.h"
#include "strandline/wire/running_fields.h"
#include "strandline/wire/schedule_fields.h"
#include "strandline/wire/shelf_fields.h"

namespace strandline::wire {

template <>
struct Fields<ZoneAim> {
  static constexpr std::string_view name = "ZoneAim";
  static constexpr auto list = std::make_tuple(
      field("zone", &ZoneAim::zone, {.required = true, .note = "area/span, or * for every zone not named"}),
      field("shade", &ZoneAim::shade, {.max_length = 60, .note = "id of a colour product of the shelf"}),
      field("level", &ZoneAim::level, {.min = 1, .max = 10}), field("tone", &ZoneAim::tone),
      field("second_tone", &ZoneAim::second_tone, {.note = "mixed into tone, as in violet-ash; only beside a level"}),
      field("lab", &ZoneAim::lab), field("leave", &ZoneAim::leave, {.note = "nothing is to touch this zone"}),
      field("match", &ZoneAim::match, {.max_length = 120, .note = "area/span: as that zone looks today"}),
      field("brighter_by", &ZoneAim::brighter_by, {.min = 0, .max = 9, .note = "levels lighter than today, in tone"}),
      field("blend", &ZoneAim::blend,
            {.min = 0, .max = 1, .note = "own colour, so much of what tells white from the rest goes"}),
      field("shadow", &ZoneAim::shadow,
            {.min = 0, .max = 9, .note = "levels darker than the next span of its area, on purpose, in tone"}));
};

template <>
struct Fields<FormulaPolicy> {
  static constexpr std::string_view name = "FormulaPolicy";
  using P = FormulaPolicy;
  static constexpr auto list =
      std::make_tuple(field("on_head_peroxide_max_percent", &P::on_head_peroxide_max_percent, {.min = 0, .max = 12}),
                      field("scalp_lightener_max_percent", &P::scalp_lightener_max_percent, {.min = 0, .max = 12}),
                      field("failed_stretch_max_percent", &P::failed_stretch_max_percent, {.min = 0, .max = 12}),
                      field("straightened_max_percent", &P::straightened_max_percent, {.min = 0, .max = 12}),
                      field("straightened_weeks", &P::straightened_weeks, {.min = 0, .max = 520}),
                      field("lightened_max_percent", &P::lightened_max_percent, {.min = 0, .max = 12}),
                      field("covered_contrast_levels", &P::covered_contrast_levels, {.min = 0, .max = 10}),
                      field("bowls_max", &P::bowls_max, {.min = 1, .max = 8}),
                      field("part_min_g", &P::part_min_g, {.min = 0, .max = 50}),
                      field("gram_step", &P::gram_step, {.min = 0.1, .max = 10}),
                      field("waste_share", &P::waste_share, {.min = 0, .max = 1}),
                      field("head_factor", &P::head_factor, {.min = 0.1, .max = 5}),
                      field("porosity_max", &P::porosity_max, {.min = 0, .max = 3}),
                      field("visits_most", &P::visits_most, {.min = 1, .max = 6}),
                      field("weeks_between_visits", &P::weeks_between_visits, {.min = 0, .max = 52}),
                      field("levels_apart_max", &P::levels_apart_max, {.min = 0, .max = 10}),
                      field("indifference_levels", &P::indifference_levels, {.min = 0, .max = 2}),
                      field("zone_indifference_levels", &P::zone_indifference_levels, {.min = 0, .max = 2}));
};

template <>
struct Fields<RuleValue> {
  static constexpr std::string_view name = "RuleValue";
  static constexpr auto list = std::make_tuple(
      field("rule", &RuleValue::rule, {.required = true, .max_length = 60}),
      field("figure", &RuleValue::figure, {.required = true, .max_length = 60}),
      field("value", &RuleValue::value, {.required = true, .min = 0, .max = 10000, .note = "unit: as the rule's"}));
};

template <>
struct Fields<RulePolicy> {
  static constexpr std::string_view name = "RulePolicy";
  using P = RulePolicy;
  static constexpr auto list =
      std::make_tuple(field("country", &P::country, {.max_length = 2, .note = "eu, uk or us"}),
                      field("skin_test_asked", &P::skin_test_asked, {.note = "whether the house asks for one"}),
                      field("off", &P::off, {.max_items = 200, .note = "house rules left out"}),
                      field("values", &P::values, {.max_items = 500, .note = "house values"}));
};

template <>
struct Fields<Policy> {
  static constexpr std::string_view name = "Policy";
  static constexpr auto list =
      std::make_tuple(field("id", &Policy::id, {.max_length = 60}), field("formula", &Policy::formula),
                      field("schedule", &Policy::schedule), field("rules", &Policy::rules));
};

template <>
struct Fields<Habit> {
  static constexpr std::string_view name = "Habit";
  static constexpr auto list =
      std::make_tuple(field("washes_per_week", &Habit::washes_per_week, {.min = 0, .max = 21}),
                      field("light_hours_per_week", &Habit::light_hours_per_week,
                            {.min = 0, .max = 100, .note = "of full daylight on the hair"}),
                      field("weeks", &Habit::weeks, {.min = 1, .max = 52, .note = "how far to look"}));
};

template <>
struct Fields<Misreading> {
  static constexpr std::string_view name = "Misreading";
  static constexpr auto list = std::make_tuple(
      field("reading", &Misreading::reading, {.required = true}),
      field("by", &Misreading::by, {.required = true, .min = -10, .max = 10, .note = "levels, share, steps"}));
};

template <>
struct Fields<AnswerOptions> {
  static constexpr std::string_view name = "AnswerOptions";
  static constexpr auto list = std::make_tuple(
      field("scenarios", &AnswerOptions::scenarios, {.min = 1, .max = 1024}),
      field("seconds", &AnswerOptions::seconds, {.min = 0, .max = 3600, .note = "a search stops then; default 120"}),
      field("habit", &AnswerOptions::habit, {.note = "read by fade"}),
      field("misread", &AnswerOptions::misread, {.note = "the answer if the whole head was read wrong by this much"}),
      field("weighed_g", &AnswerOptions::weighed_g,
            {.min = 0, .max = 5000, .note = "of the product that ran out, in the bowl already; read by substitute"}),
      field("now_min", &AnswerOptions::now_min,
            {.min = 0, .max = 1440, .note = "minutes since the visit began; read by replan"}));
};

template <>
struct Special<ShelfRef> {
  static constexpr bool exists = true;
  using Written = ShelfDocument;
  static constexpr std::string_view named = "demo";
  static void decode(const Json& in, ShelfRef& out, const At& at, const Rules& rules);
  static Json encode(const ShelfRef& ref);
};

template <>
struct Special<PolicyRef> {
  static constexpr bool exists = true;
  using Written = Policy;
  static constexpr std::string_view named = "house";
  static void decode(const Json& in, PolicyRef& out, const At& at, const Rules& rules);
  static Json encode(const PolicyRef& ref);
};

template <>
struct Fields<VisitDocument> {
  static constexpr std::string_view name = "Visit";
  using D = VisitDocument;
  static constexpr auto list = std::make_tuple(
      field("schema", &D::schema, {.required = true, .max_length = 40, .note = "strandline.visit/1"}),
      field("client", &D::client), field("date", &D::date, {.date = true, .note = "YYYY-MM-DD"}),
      field("skin_test", &D::skin_test, {.date = true, .note = "date of the last skin test; empty = none recorded"}),
      field("test", &D::test, {.note = "what is known of that test"}),
      field("answers", &D::answers, {.note = "of the client, today; what is absent is not known"}),
      field("head", &D::head, {.required = true}), field("aims", &D::aims, {.max_items = 1300}),
      field("shelf", &D::shelf, {.note = "a shelf, or \"demo\""}), field("people", &D::people, {.max_items = 12}),
      field("policy", &D::policy, {.note = "a policy, or \"house\""}), field("bowls", &D::bowls, {.max_items = 12}),
      field("mix_factor", &D::mix_factor,
            {.min = 0.5, .max = 2, .note = "grams against the usual, as this head took them before"}),
      field("way", &D::way, {.max_length = 20, .note = "kind of the way over several steps that the bowls come from"}),
      field("running", &D::running, {.note = "once the visit has begun"}), field("options", &D::options));
};

}  // namespace strandline::wire
