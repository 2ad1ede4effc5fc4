// Keys of the answers of fade and grow.
#pragma once

#include "strandline/wire/answer_fields.h"
#include "strandline/wire/later.h"

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

}  // namespace strandline::wire
