// The level scale, both ways: level → hair, and measured L*a*b* → level, tone word, warmth (M4).
#pragma once

#include <string_view>

#include "strandline/colour.h"
#include "strandline/head.h"

namespace strandline {

struct Fibre;

inline constexpr double level_lowest = 1, level_highest = 10;

// L* of natural hair of a level (1…10; linear between anchors, extended at both ends). Anchors: knowledge/levels.
double lightness_of_level(double level);
// Inverse of lightness_of_level, extended linearly beyond both ends and limited to [0, 12].
double level_of_lightness(double lightness);
// How many levels one unit of L* is worth at this level.
double levels_per_lightness(double level);

// Natural hair of a level and tone word: amounts of melanin such that its L* is the level's anchor (nominal constants).
Fibre natural_fibre(double level, Tone tone);
// White hair: keratin only.
Fibre white_fibre();
// Natural hair that reads `measured`: total melanin from L*, pheomelanin share nearest in a*, b*.
Fibre natural_fibre(const Lab& measured);

// The colour that level + tone word ask for (D65/10°): natural hair of the level moved by the word's a*b* offsets.
Lab colour_of(double level, Tone tone);
// The same for two tone words: from the colour of the first a part of the way (second_tone_share) to that of the
// second.
Lab colour_of(double level, Tone tone, Tone second);

// What a colour is called: nearest level (halves are left to the caller) and the tone word whose colour at this level
// is nearest in the a*b* plane. Warmth is the signed distance along the warm axis from natural hair of that level, in
// a*b*.
struct Named {
  double level = 0;
  Tone tone = Tone::natural;
  double warmth = 0;
};
Named name_colour(const Lab& lab);

// Unit vector in the a*b* plane along which natural hair of this colour gets warmer (target hue if chromatic).
struct Axis {
  double a = 0, b = 1;
};
Axis warm_axis(const Lab& lab);

std::string_view word(Tone tone);               // "natural", "ash" …: identifiers, not sentences
bool parse_tone(std::string_view text, Tone&);  // false if unknown

}  // namespace strandline
