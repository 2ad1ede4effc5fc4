#pragma once
// Counter-based random numbers: draw k of stream (seed, index) is a function of these three alone, so results
// do not depend on the order of work or the number of threads.
#include <cmath>
#include <cstdint>
#include <numbers>

namespace strandline::fibre_bed {

// The finaliser of SplitMix64 (Steele, Lea, Flood 2014): a bijection of 64 bits that mixes them well.
inline uint64_t mix(uint64_t z) {
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

inline uint64_t mix(uint64_t a, uint64_t b) {
  return mix(mix(a + 0x9e3779b97f4a7c15ULL) ^ (b * 0xd1342543de82ef95ULL + 1));
}

// 53 bits of a hash as a number in [0, 1).
inline double unit(uint64_t hash) { return static_cast<double>(hash >> 11) * 0x1p-53; }

class Random {
 public:
  Random(uint64_t seed, uint64_t index) : key_(mix(seed, index)) {}
  double uniform() { return unit(bits()); }
  uint64_t bits() { return mix(key_ + ++draws_ * 0x9e3779b97f4a7c15ULL); }
  // Standard normal, cut at 4 (one draw in 16 000 is drawn again).
  double normal() {
    while (true) {
      const double r = std::sqrt(-2 * std::log(1 - uniform()));
      const double x = r * std::cos(2 * std::numbers::pi * uniform());
      if (std::abs(x) <= 4) return x;
    }
  }

 private:
  uint64_t key_, draws_ = 0;
};

}  // namespace strandline::fibre_bed
