// The simulated truth's chemistry, set head by head by what the trade sees happen.
#pragma once

#include "evidence/truth_light.h"

namespace strandline::truth {

// How a fibre takes things.
struct Condition {
  double porosity = 1, resistance = 0;
};

// A bowl with what its shade leaves on the range's white hair.
struct Dose {
  Bowl bowl;
  Spectrum load{};
  double own_eumelanin = 1;  // of natural hair of the shade's level
  double own_share = 1;      // of the load shows on such hair
};

class Chemistry {
 public:
  Chemistry(Random& random, const Light& light, const Ladder& ladder);
  // The dose whose shade is named `level`.
  Dose dose(const Bowl& bowl, const Spectrum& load, double level) const;
  // One bowl on one kind of hair, which comes out more porous.
  void treat(Hair& hair, Condition& condition, const Dose& dose, double warmth, const Shift& shift) const;
  // How much of the lift is felt between these lengths; 1 beyond the warmth of the scalp.
  double warmth(double from_cm, double to_cm) const;

 private:
  double time(double minutes) const;
  double exposure(const Bowl& bowl) const;
  void lighten(Hair& hair, double exposure, double on_dye) const;
  double solved_rate(BowlClass cls, double bottle_percent, double ratio, double minutes, double levels);

  const Light& light_;
  const Ladder& ladder_;
  double yield_, intermediate_ratio_, pheomelanin_ratio_, yellow_ratio_, order_, lag_min_, tires_min_, at_skin_,
      fall_cm_;
  double tint_rate_ = 1, lightener_rate_ = 1, demi_alkali_, lightener_on_dye_, remover_;
  double same_level_tint_, same_level_demi_, taken_on_dye_, dye_minutes_, dye_per_porosity_, dye_tilt_,
      lift_per_porosity_, resists_, wear_, strength_;
};

}  // namespace strandline::truth
