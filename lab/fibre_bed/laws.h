#pragma once
// Laws for two populations seen together, and the constants that suit a set of blends best.
#include <functional>
#include <span>

namespace strandline::fibre_bed {

// Reflectance of share s of fibres whose bed alone has r1 and 1 - s of those with r0.
double blend_stearns_noechel(double s, double r1, double r0, double m);
// Mean of (R + c)^p by share; p = -1 is Stearns-Noechel with c = 0.01(1-M)/M. p not 0.
double blend_power(double s, double r1, double r0, double p, double c);

struct Blend {
  double share, white, pigmented, mixed;  // share of white, reflectances
};

// Root mean square of L*(law) - L*(mixed).
double misfit(std::span<const Blend> blends, const std::function<double(const Blend&)>& law);

// x in [low, high] where f is least, for f with one valley; within 1e-5 of the range.
double least(double low, double high, const std::function<double(double)>& f);

// M in [0.005, 1] with the least misfit.
double best_m(std::span<const Blend> blends);

}  // namespace strandline::fibre_bed
