// Readings that are off, as readings are: the same head read a little otherwise.
#pragma once

#include <optional>

#include "strandline/head.h"

namespace strandline {

// What a misreading can be, by how much (common practice: half a level, ten points of white, one step of porosity).
struct Misreading {
  const char* reading;  // "level" (levels), "white" (share), "porosity" (steps)
  double by;
};
inline constexpr Misreading kMisreadings[] = {{"level", -0.5}, {"level", 0.5},     {"white", -0.1},
                                              {"white", 0.1},  {"porosity", -1.0}, {"porosity", 1.0}};

// The head as it would be if every reading of one kind were off; absent where there is nothing to misread.
std::optional<Head> misread(Head head, const Misreading& m);

}  // namespace strandline
