// A whole line of shades from the few of them that were measured.
#pragma once

#include <string>
#include <vector>

#include "strandline/shelf.h"

namespace strandline::line {

// Shades of one range whose swatches on white hair are measured say how far the maker goes from what names promise,
// over levels and tones; the others follow as far as they are near. Mean of a Gaussian process of ln(load / promise),
// the same for every band (knowledge/learning/priors.json). Gives an offer to every shade of the shelf known by its
// level and tone alone, in ranges with `least_swatches` measured ones; all else stays. Requires check(shelf) empty.
inline constexpr int least_swatches = 3;
void complete(Shelf& shelf);

// How sure the line is of one shade: standard deviation of ln(load / promise), and the same before any swatch.
struct Sure {
  std::string product;
  bool measured = false;
  double sd = 0, before = 0;
};
std::vector<Sure> sureness(const Shelf& shelf, const std::string& range);

// The shades whose swatches would say most of the others, best first, at most `count`; none that is measured already.
std::vector<std::string> measure_next(const Shelf& shelf, const std::string& range, int count);

// The swatch that white hair shows of a load, and of L*a*b* alone: the plainest dye that shows it.
Spectrum swatch_of_load(const Spectrum& load);
Spectrum swatch_of(const Lab& lab);

}  // namespace strandline::line
