// A simulated maker's whole line: every level in every tone, with the maker's own ways.
#pragma once

#include <vector>

#include "evidence/truth.h"

namespace strandline::truth {

struct LineShade {
  int level = 1;
  Word tone = Word::natural;
  Spectrum swatch{};    // truly, on the range's white hair
  Spectrum measured{};  // by an instrument
};

// Ten levels in six tones.
std::vector<LineShade> simulate_line(std::uint64_t seed, int maker);

}  // namespace strandline::truth
