// grow: a head after its bowls → the line that regrowth draws, and when it shows (M11).
#pragma once

#include "strandline/predict.h"

namespace strandline {

struct RegrowthLine {
  std::string area, zone;  // the coloured zone nearest the scalp
  Spectrum natural_reflectance{}, coloured_reflectance{};
  Lab natural{}, coloured{};   // what grows, and what is there after the bowls (D65/10°)
  double contrast_levels = 0;  // how far apart they look, tone included, in levels
  bool shows = false;          // false: too close to draw a line
  Spread weeks;                // until the line shows, over 256 scenarios; 0 where it does not
};

struct RegrowthLength {
  double weeks = 0;
  Reading cm;
};

struct Growth {
  std::vector<RegrowthLine> lines;      // one an area, document order
  std::vector<RegrowthLength> lengths;  // at 2, 4, 6, 8 and 12 weeks
};

// Requires check(head) and check(shelf) to be empty. Without steps the line of the colour that is there. Problems:
// those of predict. Areas of other hair with a bond alone are left out: it does not grow.
Result<Growth> grow(const Head& head, const std::vector<Step>& steps, const Shelf& shelf,
                    const ParallelFor& parallel = serial_for);

// How far apart two colours look where they meet, in levels, tone included.
double line_contrast(const Lab& natural, const Lab& coloured, const Constants& c);

}  // namespace strandline
