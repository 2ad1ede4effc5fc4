// The simulated truth's chemistry: rates followed in small steps of time.
#pragma once

#include "evidence/truth.h"
#include "evidence/truth_bed.h"
#include "evidence/truth_random.h"

namespace strandline::truth {

class Chemistry {
 public:
  Chemistry(Random& random, const Known& bowl);
  // Pigment goes, `dye` (what the shade leaves on white hair by the reference process) comes.
  void treat(Hair& hair, const Spectrum& dye, double porosity) const;

 private:
  double exposure(double porosity) const;
  Known bowl_;
  double rate_, order_, time_exponent_, half_life_min_, heat_, yield_, intermediate_ratio_, pheomelanin_ratio_;
  double dye_strength_, dye_exponent_, dye_per_porosity_, dye_tilt_, lift_per_porosity_;
};

}  // namespace strandline::truth
