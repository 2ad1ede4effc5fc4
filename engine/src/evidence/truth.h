// Simulated truth: heads, readings of them and what a bowl really did, by equations of its own.
//
// Nothing of the engine is used here but colour numbers (tools/check_layers holds that), so that a stated range is
// tried against other code: another packing of the bed, another blend constant, another law in time, readers with a
// bias.
#pragma once

#include <cstdint>

#include "strandline/colour.h"
#include "strandline/spectrum.h"

namespace strandline::truth {

enum class Kind { tint, lightener, demi };
inline constexpr int kKinds = 3;

// What the colourist knows, as read or weighed.
struct Known {
  double level = 5;        // of the pigmented fibres, read by eye
  double white_share = 0;  // 0…1, read by eye
  double porosity = 1;     // by feel
  double from_cm = 0, to_cm = 0;
  Kind kind = Kind::tint;
  double bottle_percent = 6, ratio = 1, minutes = 35;
  Spectrum swatch{};  // of the shade on the range's white hair; unused for a lightener
};

struct Case {
  Known known;
  Lab before{}, after{};  // D65/10°, all fibres seen together
};

// The `index`-th case of the stream `seed`: the same numbers on every machine.
Case simulate(std::uint64_t seed, int index);

}  // namespace strandline::truth
