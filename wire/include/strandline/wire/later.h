// What comes after the visit, as the doors answer it: fade week by week, and the line that regrowth draws.
#pragma once

#include "strandline/fade.h"
#include "strandline/grow.h"
#include "strandline/wire/answer.h"

namespace strandline::wire {

struct FadeMomentView {
  int week = 0;
  double washes = 0;
  Lab lab{};
  UnderLights srgb;
  double level = 0;
  Tone tone = Tone::natural;
  Spread level_spread;
  double delta_e_2000 = 0;  // to week 0
};

struct FadeZoneView {
  std::string zone;
  std::vector<FadeMomentView> moments;
  std::optional<int> visible_week;
};

struct FadeAnswer {
  double washes_per_week = 0, light_hours_per_week = 0;
  std::vector<FadeZoneView> zones;
};

struct RegrowthView {
  std::string area, zone;
  Lab natural{}, coloured{};
  UnderLights natural_srgb, coloured_srgb;
  double natural_level = 0, coloured_level = 0;
  Tone natural_tone = Tone::natural, coloured_tone = Tone::natural;
  double contrast_levels = 0;
  bool shows = false;
  Spread weeks;
};

struct RegrowthLengthView {
  double weeks = 0, cm = 0, cm_sd = 0;
};

struct GrowAnswer {
  std::vector<RegrowthView> lines;
  std::vector<RegrowthLengthView> lengths;
};

FadeAnswer view(const Fading& fading);
GrowAnswer view(const Growth& growth);

Json answer_json(const FadeAnswer& answer);
Json answer_json(const GrowAnswer& answer);

}  // namespace strandline::wire
