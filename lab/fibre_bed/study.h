#pragma once
// The three studies. Each is a run (or a few) of the experiment and the numbers read off it.
#include <string>
#include <vector>

#include "experiment.h"
#include "laws.h"

namespace strandline::fibre_bed {

struct Effort {
  double scale = 1;  // multiplies the numbers of photons; 1 is full regeneration
  int threads = 1;
  uint64_t seed = 1;
};

// Optical depths of the tables: 0, then 29 log-spaced from 0.002 to 20.
std::vector<double> curve_depths();

struct Value {
  double value = 0, error = 0;  // standard error
};

// Beds that the spread is taken over; the first is the reference.
struct Variant {
  std::string name;
  BedSpec bed{};
};
std::vector<Variant> variants();
// White fibres in packets, and white fibres that scatter inside; for the blend beside variants().
std::vector<Variant> white_variants();

// R(tau) for each of curve_depths(): light at 8 degrees, all that returns counted (specular included). R(0)
// is 1 exactly.
std::vector<Value> study_curve(const BedSpec& bed, double photons, const Effort& effort);

struct BlendPair {
  double tau_white, tau_pigmented;
  std::vector<Blend> blends;
  std::vector<double> errors;  // of each blend's mixed reflectance
  Value m;                     // best Stearns-Noechel M
  double misfit;               // rms of L* at that M
};
struct BlendStudy {
  std::vector<BlendPair> pairs;
  Value m;        // best single M over all pairs
  double misfit;  // rms of L* at that M
};
BlendStudy study_blend(const BedSpec& bed, double photons, const Effort& effort);

struct Geometry {
  std::vector<Value> sphere, sphere_excluded, average, along,
      across;  // by curve_depths(); entry 0 is tau = 0.002
  std::vector<double> tau;
};
Geometry study_geometry(const BedSpec& bed, double photons, const Effort& effort);

}  // namespace strandline::fibre_bed
