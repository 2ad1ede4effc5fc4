#include "strandline/wire/later.h"

#include "strandline/levels.h"
#include "strandline/wire/answer_fields.h"

namespace strandline::wire {

template <>
struct Fields<FadeMomentView> {
  static constexpr std::string_view name = "FadeMoment";
  using V = FadeMomentView;
  static constexpr auto list = std::make_tuple(
      field("week", &V::week, always), field("washes", &V::washes, always), field("lab", &V::lab, always),
      field("srgb", &V::srgb, always), field("level", &V::level, always), field("tone", &V::tone, always),
      field("level_spread", &V::level_spread, always), field("delta_e_2000", &V::delta_e_2000, always));
};

template <>
struct Fields<FadeZoneView> {
  static constexpr std::string_view name = "FadeZone";
  using V = FadeZoneView;
  static constexpr auto list = std::make_tuple(field("zone", &V::zone, always), field("moments", &V::moments, always),
                                               field("visible_week", &V::visible_week));
};

template <>
struct Fields<FadeAnswer> {
  static constexpr std::string_view name = "FadeAnswer", verb = "fade";
  using A = FadeAnswer;
  static constexpr auto list = std::make_tuple(field("washes_per_week", &A::washes_per_week, always),
                                               field("light_hours_per_week", &A::light_hours_per_week, always),
                                               field("zones", &A::zones, always));
};

template <>
struct Fields<RegrowthView> {
  static constexpr std::string_view name = "RegrowthLine";
  using V = RegrowthView;
  static constexpr auto list = std::make_tuple(
      field("area", &V::area, always), field("zone", &V::zone, always), field("natural", &V::natural, always),
      field("coloured", &V::coloured, always), field("natural_srgb", &V::natural_srgb, always),
      field("coloured_srgb", &V::coloured_srgb, always), field("natural_level", &V::natural_level, always),
      field("coloured_level", &V::coloured_level, always), field("natural_tone", &V::natural_tone, always),
      field("coloured_tone", &V::coloured_tone, always), field("contrast_levels", &V::contrast_levels, always),
      field("shows", &V::shows, always), field("weeks", &V::weeks, always));
};

template <>
struct Fields<RegrowthLengthView> {
  static constexpr std::string_view name = "RegrowthLength";
  using V = RegrowthLengthView;
  static constexpr auto list = std::make_tuple(field("weeks", &V::weeks, always), field("cm", &V::cm, always),
                                               field("cm_sd", &V::cm_sd, always));
};

template <>
struct Fields<GrowAnswer> {
  static constexpr std::string_view name = "GrowAnswer", verb = "grow";
  static constexpr auto list =
      std::make_tuple(field("lines", &GrowAnswer::lines, always), field("lengths", &GrowAnswer::lengths, always));
};

namespace {

template <class T>
Json with_schema(const T& answer) {
  Json out{{"schema", "strandline." + std::string(Fields<T>::verb) + "/1"}};
  encode_members(answer, out);
  return out;
}

FadeMomentView view(const FadeMoment& m) {
  return {m.week, m.washes, m.lab, under_lights(m.reflectance), m.named.level, m.named.tone, m.level, m.delta_e_2000};
}

RegrowthView view(const RegrowthLine& l) {
  const Named natural = name_colour(l.natural), coloured = name_colour(l.coloured);
  return {l.area,
          l.zone,
          l.natural,
          l.coloured,
          under_lights(l.natural_reflectance),
          under_lights(l.coloured_reflectance),
          natural.level,
          coloured.level,
          natural.tone,
          coloured.tone,
          l.contrast_levels,
          l.shows,
          l.weeks};
}

}  // namespace

FadeAnswer view(const Fading& fading) {
  FadeAnswer out{fading.habit.washes_per_week, fading.habit.light_hours_per_week, {}};
  for (const FadeZone& z : fading.zones) {
    FadeZoneView zone{z.zone, {}, z.visible_week};
    for (const FadeMoment& m : z.moments) zone.moments.push_back(view(m));
    out.zones.push_back(std::move(zone));
  }
  return out;
}

GrowAnswer view(const Growth& growth) {
  GrowAnswer out;
  for (const RegrowthLine& l : growth.lines) out.lines.push_back(view(l));
  for (const RegrowthLength& l : growth.lengths) out.lengths.push_back({l.weeks, l.cm.value, l.cm.sd});
  return out;
}

Json answer_json(const FadeAnswer& a) { return with_schema(a); }
Json answer_json(const GrowAnswer& a) { return with_schema(a); }

}  // namespace strandline::wire
