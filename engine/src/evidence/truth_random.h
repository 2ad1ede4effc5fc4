// A stream of numbers fixed by a seed and an index.
#pragma once

#include <cmath>
#include <cstdint>

namespace strandline::truth {

// Sequence of Weyl steps through a 64-bit mixer (Steele, Lea, Flood 2014).
class Random {
 public:
  Random(std::uint64_t seed, int index) : state_(seed * 0x9e3779b97f4a7c15ULL + static_cast<std::uint64_t>(index)) {
    for (int i = 0; i < 4; ++i) next();
  }
  double uniform(double low, double high) { return low + (high - low) * (static_cast<double>(next() >> 11) * 0x1p-53); }
  // Box and Muller; two uniforms a number.
  double normal(double mean, double sd) {
    const double u = 1 - uniform(0, 1), v = uniform(0, 1);
    return mean + sd * std::sqrt(-2 * std::log(u)) * std::cos(2 * M_PI * v);
  }
  double lognormal(double median, double sd) { return median * std::exp(normal(0, sd)); }

 private:
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0xbf58476d1ce4e5b9ULL);
    z = (z ^ (z >> 32)) * 0xd6e8feb86659fd93ULL;
    z = (z ^ (z >> 32)) * 0xd6e8feb86659fd93ULL;
    return z ^ (z >> 32);
  }
  std::uint64_t state_;
};

}  // namespace strandline::truth
