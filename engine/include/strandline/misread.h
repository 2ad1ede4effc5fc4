// Readings that are off, as readings are: the same head read a little otherwise.
#pragma once

#include <optional>
#include <string_view>

#include "strandline/head.h"

namespace strandline {

enum class MisreadReading { level, white, porosity };

struct Misreading {
  MisreadReading reading = MisreadReading::level;
  double by = 0;  // levels, share, steps; what leaves the scale stays at its end
};
// Common practice: half a level, ten points of white, one step of porosity.
inline constexpr Misreading kMisreadings[] = {{MisreadReading::level, -0.5},    {MisreadReading::level, 0.5},
                                              {MisreadReading::white, -0.1},    {MisreadReading::white, 0.1},
                                              {MisreadReading::porosity, -1.0}, {MisreadReading::porosity, 1.0}};
// "level", "white", "porosity".
std::string_view code(MisreadReading reading);

// The head as it would be if every reading of one kind were off; absent where there is nothing to misread.
std::optional<Head> misread(Head head, const Misreading& m);

}  // namespace strandline
