// A head as a document writes it. A span lists its populations, or says level, tone and white share in short.
#pragma once

#include "strandline/head.h"
#include "strandline/wire/decode.h"
#include "strandline/wire/facts_fields.h"

namespace strandline::wire {

template <>
struct Fields<Lab> {
  static constexpr std::string_view name = "Lab";
  static constexpr auto list = std::make_tuple(
      field("l", &Lab::l,
            {.required = true, .min = 0, .max = 100, .note = "CIELAB L*, D65, 10 degree observer, sphere"}),
      field("a", &Lab::a, {.required = true, .min = -150, .max = 150}),
      field("b", &Lab::b, {.required = true, .min = -150, .max = 150}));
};

// Doubt of a reading given as a plain number (knowledge/doubt).
double doubt_of_level();
double doubt_of_white_percent();
double doubt_of_porosity();

inline constexpr Rules level_rules{.min = 1, .max = 10, .sd = doubt_of_level, .note = "level 1 to 10"};

template <>
struct Fields<Population> {
  static constexpr std::string_view name = "Population";
  static constexpr auto list = std::make_tuple(
      field("name", &Population::name, {.max_length = 60}), field("kind", &Population::kind),
      field("share", &Population::share,
            {.required = true, .min = 0, .max = 1, .note = "of the fibres of this zone; shares add to 1"}),
      field("level", &Population::level, level_rules), field("tone", &Population::tone),
      field("origin", &Population::origin), field("natural_level", &Population::natural_level, level_rules),
      field("packet_mm", &Population::packet_mm,
            {.min = 0.2, .max = 100, .note = "width of its woven packets; absent = mixed fibre by fibre"}),
      field("measured", &Population::measured, {.note = "overrides level and tone"}));
};

template <>
struct Fields<Service> {
  static constexpr std::string_view name = "Service";
  static constexpr auto list =
      std::make_tuple(field("kind", &Service::kind, {.required = true}),
                      field("weeks_ago", &Service::weeks_ago, {.min = 0, .max = 1500, .note = "absent = unknown"}),
                      field("layers", &Service::layers, {.min = 1, .max = 50, .note = "over each other"}),
                      field("pack_seen", &Service::pack_seen, {.note = "home colour: known, and no metal in it"}));
};

// Level, tone and white share of a span in short; stands instead of `populations`.
struct Shorthand {
  std::optional<Reading> level, white_percent, natural_level;
  std::optional<Tone> tone;
  std::optional<ColourOrigin> origin;
};

template <>
struct Fields<Shorthand> {
  static constexpr auto list = std::make_tuple(
      field("level", &Shorthand::level, level_rules), field("tone", &Shorthand::tone),
      field("white_percent", &Shorthand::white_percent,
            {.min = 0, .max = 100, .sd = doubt_of_white_percent, .note = "% of the fibres"}),
      field("origin", &Shorthand::origin), field("natural_level", &Shorthand::natural_level, level_rules));
};

// A span with its shorthand, as written.
struct SpanDocument {
  Span span;
  Shorthand shorthand;
};

template <>
struct Fields<Span> {
  static constexpr auto list = std::make_tuple(
      field("id", &Span::id, {.required = true, .max_length = 60}),
      field("from_cm", &Span::from_cm, {.min = 0, .max = 300, .note = "cm of stretched hair, 0 at the scalp"}),
      field("to_cm", &Span::to_cm, {.required = true, .min = 0, .max = 300, .note = "cm"}),
      field("populations", &Span::populations, {.max_items = 8}),
      field("porosity", &Span::porosity,
            {.min = 0, .max = 3, .sd = doubt_of_porosity, .note = "0 low, 1 average, 2 high, 3 very high"}),
      field("resistance", &Span::resistance, {.min = 0, .max = 1, .note = "of white fibres: 0 none, 1 glassy"}),
      field("services", &Span::services, {.max_items = 30}),
      field("wet_stretch_percent", &Span::wet_stretch_percent, {.min = 0, .max = 200, .note = "absent = not tested"}),
      field("stretch_returns", &Span::stretch_returns), field("history_unknown", &Span::history_unknown),
      field("extension", &Span::extension), field("metal_test", &Span::metal_test),
      field("strand", &Span::strand, {.note = "tried beforehand"}),
      field("earlier_cover", &Span::earlier_cover, {.note = "how white took colour before"}),
      field("read_in", &Span::read_in, {.note = "the light its level was read by"}),
      field("read_damp", &Span::read_damp));
};

template <>
struct Fields<SpanDocument> {
  static constexpr std::string_view name = "Span";
  static constexpr auto list = std::make_tuple(inlined(&SpanDocument::span), inlined(&SpanDocument::shorthand));
};

template <>
struct Special<Span> {
  static constexpr bool exists = true;
  using Shape = SpanDocument;
  static void decode(const Json& in, Span& out, const At& at, const Rules& rules);
  static Json encode(const Span& span);
};

template <>
struct Fields<Weave> {
  static constexpr std::string_view name = "Weave";
  static constexpr auto list = std::make_tuple(
      field("from", &Weave::from, {.required = true, .max_length = 60, .note = "area that the packets come out of"}),
      field("share", &Weave::share, {.required = true, .min = 0.02, .max = 0.9, .note = "of the hair of that area"}),
      field("width_mm", &Weave::width_mm, {.min = 0.2, .max = 100, .note = "of one packet"}));
};

template <>
struct Fields<Area> {
  static constexpr std::string_view name = "Area";
  static constexpr auto list = std::make_tuple(
      field("id", &Area::id, {.required = true, .max_length = 60}), field("kind", &Area::kind),
      field("scalp_cm2", &Area::scalp_cm2, {.min = 0, .max = 1500, .note = "cm2 of scalp that this area covers"}),
      field("hair_factor", &Area::hair_factor, {.min = 0, .max = 3, .note = "density against the head's, thin < 1"}),
      field("woven", &Area::woven, {.note = "packets taken out of another area, with bowls of their own"}),
      field("scalp", &Area::scalp, {.note = "unknown: as answers.scalp"}), field("loss", &Area::loss),
      field("face", &Area::face, {.note = "hair that is not on the scalp"}),
      field("spans", &Area::spans, {.required = true, .max_items = 20}));
};

template <>
struct Fields<Hair> {
  static constexpr std::string_view name = "Hair";
  static constexpr auto list =
      std::make_tuple(field("hairs_per_cm2", &Hair::hairs_per_cm2, {.min = 1, .max = 600}),
                      field("diameter_um", &Hair::diameter_um, {.min = 20, .max = 200, .note = "micrometre"}),
                      field("texture", &Hair::texture),
                      field("layers", &Hair::layers, {.note = "of the cut: with many, fewer fibres reach the tips"}));
};

template <>
struct Fields<Head> {
  static constexpr std::string_view name = "Head";
  static constexpr auto list =
      std::make_tuple(field("hair", &Head::hair), field("areas", &Head::areas, {.required = true, .max_items = 60}));
};

}  // namespace strandline::wire
