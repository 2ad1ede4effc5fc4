// A strand's colour from a photo of it in the window of a printed card: the card tells light, white and tone curve.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "strandline/measured.h"

namespace strandline::card {

// Our own card, millimetres from its upper left corner: a frame of patches about a window with the strand in it, and a
// mark in each corner. The same everywhere, so that a card that was measured once is known.
inline constexpr double width_mm = 148, height_mm = 105, patch_mm = 13;
struct Patch {
  std::string id;  // row and column: "A2" …
  double x_mm = 0, y_mm = 0;
  std::array<double, 3> print{};  // what is asked of the printer: sRGB, encoded, 0…1
  bool grey = false;              // printed without hue: for white balance, exposure and tone curve
};
const std::vector<Patch>& patches();
struct Box {
  double x_mm, y_mm, width_mm, height_mm;
};
Box window();
// Upper left, upper right, lower right, lower left: the middle of each mark. From its middle a mark is black, white and
// black again, as far as these radii.
inline constexpr std::array<double, 3> mark_mm = {1.4, 3.4, 6};
std::array<std::array<double, 2>, 4> marks();
// The card to be printed at its size: its marks, patches and window, the name of a patch beside none of them.
std::string svg();

// A picture, row after row from its upper left, three bytes a pixel: red, green, blue, sRGB-encoded.
struct Picture {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;
};

using Code = std::array<double, 3>;  // 0…255 for red, green and blue, the mean of an area
struct Codes {
  std::vector<Code> patches;  // in the order of patches()
  Code strand{};
};

// The card in a picture, turned and tilted as it may be, up to about 30° from aside. Problems: card_picture (no
// picture) · card_not_found · card_small {pixels} (fewer than 12 across a patch).
Result<Codes> find(const Picture& picture);

// A card's patches as an instrument measured them, in the order of patches(). Samples are patches by their names;
// problems: card_patches_missing {ids, count}.
Result<std::vector<measured::Sample>> references(const measured::File& file);

struct Measured {
  Lab lab{};              // D65/10°
  double error = 0;       // CIEDE2000: what nine in ten patches about as light were off by, each left out of the fit
  std::string nearest;    // patch that looks most like it
  double to_nearest = 0;  // CIEDE2000
};

// The strand by a card that was measured. Problems: card_clipped (a white is at its brightest: too much light) ·
// card_dark · card_uneven (light falls off by more than 40 % over the card) · card_strand_clipped (a channel of the
// strand is at its darkest or brightest).
Result<Measured> measure(const Codes& seen, std::span<const measured::Sample> references);

// By a card nobody measured: the two patches that look most like the strand, and nothing in numbers.
struct Neighbours {
  std::string nearest, next;
  bool lighter = false;  // the strand is lighter than the nearest
};
Result<Neighbours> compare(const Codes& seen);

}  // namespace strandline::card
