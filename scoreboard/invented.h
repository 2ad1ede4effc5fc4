// Heads and shelves made up by a program with a fixed seed, for figures that must not depend on anybody's shelf.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "strandline/pipeline.h"

namespace strandline::scoreboard {

// The same numbers with every library: a linear congruence (Knuth, MMIX), upper bits.
class Seeded {
 public:
  explicit Seeded(std::uint64_t seed) : state_(seed * 0x9e3779b97f4a7c15ULL + 1) {}
  double uniform(double low, double high);
  int below(int count) { return static_cast<int>(uniform(0, count)); }

 private:
  std::uint64_t state_;
};

// One permanent range: shades of every level and tone word, one in twenty a corrector, and its developers.
Shelf invented_shelf(int shades, const std::vector<double>& strengths, const std::vector<double>& ratios);

struct Wanted {
  Head head;
  std::vector<ZoneAim> wishes;
};
// A regrowth with some white, and a wish from two levels darker to one and a half lighter.
Wanted invented_zone(std::uint64_t seed);
// Five areas with a regrowth and lengths that were coloured before; one wish for the head, sometimes lighter lengths.
Wanted invented_head(std::uint64_t seed);

}  // namespace strandline::scoreboard
