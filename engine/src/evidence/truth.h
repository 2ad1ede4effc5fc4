// Simulated truth: heads, readings of them and what bowls really did, by equations and numbers of its own.
//
// Nothing of the engine is used here but colour numbers (tools/check_layers holds that): neither its curve, its
// extinctions, its blend law, its levels nor its constants. How fast and how deep things go is set, head by head, by
// what colourists see ("a shade on its own level gives that level"), not by the engine's fit.
#pragma once

#include <cstdint>
#include <vector>

#include "strandline/colour.h"
#include "strandline/spectrum.h"

namespace strandline::truth {

enum class Kind { tint, demi, toner, lightener, remover, second_step };
inline constexpr int kKinds = 6;
enum class Word { natural, ash, violet, beige, gold, copper, red, green };  // how tone is told
inline constexpr int kWords = 8;
enum class Past { natural, tinted, lightened };

enum class BowlClass { permanent, demi, lightener, remover };
struct Bowl {
  BowlClass cls = BowlClass::permanent;
  double bottle_percent = 6, ratio = 1, minutes = 35;
  Spectrum swatch{};  // of the shade on the range's white hair; unused where nothing is deposited
};

// What the colourist knows, as read or weighed.
struct Known {
  Kind kind = Kind::tint;
  double level = 5;  // of the pigmented fibres, read by eye
  Word tone = Word::natural;
  Past past = Past::natural;
  double natural_level = 5;  // under a colour
  double white_share = 0;    // 0…1, read by eye
  double porosity = 1;       // by feel
  double resistance = 0;     // of white fibres, by feel
  double from_cm = 0, to_cm = 0;
  bool red = false;  // a shade of it is copper or red
  std::vector<Bowl> bowls;
};

// The world shifted against what this truth takes for usual.
struct Shift {
  double dye = 1, rate = 1;
};

struct Case {
  Known known;
  Lab before{};            // D65/10°, all fibres seen together
  std::vector<Lab> after;  // one for each shift: the same head, readings and bowls
};

// The `index`-th case of this kind in the stream `seed`: the same numbers on every machine.
Case simulate(std::uint64_t seed, Kind kind, int index, const std::vector<Shift>& shifts = {{}});

}  // namespace strandline::truth
