// fade: a head after its bowls, and the weeks and washes that follow → the tone week by week (M10).
#pragma once

#include "strandline/predict.h"

namespace strandline {

struct Habit {
  double washes_per_week = 3;       // 0…21
  double light_hours_per_week = 3;  // of full daylight on the hair, 0…100
  int weeks = 8;                    // how far to look, 1…52
};

struct FadeMoment {
  int week = 0;
  double washes = 0;
  Spectrum reflectance{};
  Lab lab{};  // D65/10°, all fibres seen together
  Named named;
  Spread level;             // over 64 scenarios of readings, constants and fade
  double delta_e_2000 = 0;  // to week 0
};

struct FadeZone {
  std::string zone;
  std::vector<FadeMoment> moments;  // weeks 0, 1 … habit.weeks
  std::optional<int> visible_week;  // first week whose ΔE00 to week 0 is visibly off
};

struct Fading {
  Habit habit;
  std::vector<FadeZone> zones;  // document order
};

// Requires check(head) and check(shelf) to be empty. Without steps the colour that is there fades. Problems: those of
// predict, and a habit outside its ranges. Growth is left out: see grow.h.
Result<Fading> fade(const Head& head, const std::vector<Step>& steps, const Shelf& shelf, const Habit& habit,
                    const ParallelFor& parallel = serial_for);

// How red a dye is, from its optical depth: 0 for browns, blues and yellows, 1 for one that absorbs around 515 nm and
// not beyond 600 nm. A zero spectrum gives 0.
double redness(const Spectrum& dye);

// What is left of a dye's optical depth after washes and hours of light: two pools, one quick, one slow. `cls` is the
// class that left it, `red` its redness, porosity as in Fibre. 0…1, falling with washes and hours.
double dye_left(ProductClass cls, double red, double porosity, double washes, double light_hours, const Constants& c);

}  // namespace strandline
