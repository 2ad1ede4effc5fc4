// The simulated truth's light: hair whose reflectance falls exponentially with a power of what absorbs in it, seen
// alone or among other hair, and the trade's words for it.
#pragma once

#include "evidence/truth.h"
#include "evidence/truth_random.h"

namespace strandline::truth {

struct Hair {
  double eumelanin = 0, pheomelanin = 0, intermediate = 0;  // absorption at 550 nm
  double yellow = 1;                                        // of keratin's yellow left
  Spectrum dye{};
};

// One head's matter and bed: R = g + (1 − g)·W·exp(−2.2·σ^p).
class Light {
 public:
  explicit Light(Random& random);
  // A range's white hair as it is usually taken.
  static Light usual();
  Spectrum reflectance(const Hair& hair) const;
  Lab colour(const Hair& hair) const;
  // Two kinds of hair seen together: Friele's law.
  Lab blend(const Hair& one, const Hair& other, double share_of_other) const;
  // Natural hair with this L*.
  Hair natural(double lightness) const;

 private:
  Light() = default;
  void set_white(double lightness, double yellowness);
  double floor_ = 0.024, power_ = 0.5, white_ = 0.45, yellow_ = 0.1, pheomelanin_ = 0.1, slope_ = 75, friele_ = 0.12;
};

// A salon's ladder of levels: each step a little larger than the last, from black at L* 18.3.
class Ladder {
 public:
  Ladder() = default;
  explicit Ladder(Random& random) : shift_(random.normal(0, 0.6)) {}
  double lightness(double level) const;
  double level(double lightness) const;

 private:
  double shift_ = 0;
};

// Colour of a tone word beside natural hair of this colour; and the word that lies nearest.
Lab toned(const Lab& natural, Word word);
Word nearest_word(const Lab& natural, const Lab& seen);

}  // namespace strandline::truth
