// reach: head + shelf → what each zone can become today, level by level and tone by tone.
#pragma once

#include <string>
#include <vector>

#include "strandline/formulate.h"

namespace strandline {

// One wish a colourist could have, and the nearest this shelf comes to it in one bowl today. Seen at the nominal
// reading: no likelihood is claimed.
struct ReachCell {
  double level = 0;  // wished, 1…10 in whole levels
  Tone tone = Tone::natural;
  Lab wished;
  Lab nearest;                             // D65/10°, of the recipe that misses least
  double level_error = 0, tone_error = 0;  // nearest − wished: levels (positive = lighter), a*b* units
  double contrast_levels = 0;              // white beside pigmented there
  bool reachable = false;                  // within half a level and the tone, white covered
  Reasons why;                             // where it is not: what stays, as in ZonePlan::why_not
};

struct ZoneReach {
  std::string zone;
  std::vector<ReachCell> cells;  // tones within levels
  // Corners of the hull of all that can be had, in L*a*b*: the colours furthest out in each of the 26 directions to the
  // faces, edges and corners of a cube; no colour twice. Their own hull lies within the whole and touches it there.
  std::vector<Lab> corners;
  long long recipes = 0;  // recipe and setting pairs looked at: every one of up to two shades, and none at all
};

// Requires check(head) and check(shelf) empty. Problems: no range usable on this head.
Result<std::vector<ZoneReach>> reach(const Head& head, const Shelf& shelf, const FormulaPolicy& policy,
                                     const ParallelFor& parallel = serial_for);

}  // namespace strandline
