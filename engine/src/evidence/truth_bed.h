// The simulated truth's light: hair in a bed of its own packing, seen alone or among other hair.
#pragma once

#include "evidence/truth_random.h"
#include "generated/constants.h"
#include "strandline/colour.h"
#include "strandline/spectrum.h"

namespace strandline::truth {

struct Absorbers {
  Spectrum keratin{}, eumelanin{}, pheomelanin{}, intermediate{};  // optical depth, the pigments per % w/w
};

struct Hair {
  const Absorbers* absorbers = nullptr;
  double eumelanin = 0, pheomelanin = 0, intermediate = 0;  // % w/w
  Spectrum dye{};
  Spectrum depth() const;
};

// Reflectance from the tables of the transport, packing anywhere between 0.35 and 0.54; logarithms in between.
class Bed {
 public:
  explicit Bed(Random& random) : packing_(random.uniform(0.35, 0.54)) {}
  Spectrum reflectance(const Spectrum& depth) const;
  Lab colour(const Spectrum& depth) const;
  // Two kinds of hair seen together: Stearns and Noechel with the constant m.
  Lab blend(const Spectrum& one, const Spectrum& other, double share_of_other, double m) const;

 private:
  double reflectance(double depth) const;
  double packing_;
};

// One head's hair as nature (and the range's white substrate) made it: constants drawn about what is believed.
class Nature {
 public:
  explicit Nature(Random& random);
  Hair white() const;
  // A substrate much like the average white hair.
  Hair typical_white() const;
  // Natural hair with this L* in this bed.
  Hair hair(const Bed& bed, double lightness) const;
  double blend_m() const { return blend_m_; }

 private:
  Absorbers own_, typical_;
  double pheomelanin_share_, blend_m_;
};

// Value and spread that knowledge/ gives a constant, by key; the spread is that of the logarithm where `log`.
struct Belief {
  double value = 0, sd = 0;
  bool log = false;
  double draw(Random& random) const { return log ? random.lognormal(value, sd) : random.normal(value, sd); }
};
Belief belief(double Constants::* member);

}  // namespace strandline::truth
