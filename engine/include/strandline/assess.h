// assess: observations → a head that computes, and the colours it shows today.
#pragma once

#include <string>
#include <vector>

#include "strandline/colour.h"
#include "strandline/head.h"
#include "strandline/levels.h"
#include "strandline/result.h"
#include "strandline/units.h"

namespace strandline {

// One fibre population as predicted (or as it is today).
struct PopulationColour {
  std::string name;
  FibreKind kind = FibreKind::pigmented;
  double share = 0;
  Spectrum reflectance{};  // 31 bands
  Lab lab;                 // D65/10°
  Named named;
  Spread level;  // over the scenarios
};

// A zone as it looks: every population by itself, and all seen together.
struct ZoneColour {
  std::string zone;
  std::vector<PopulationColour> populations;
  Spectrum reflectance{};  // populations seen together (M5)
  Lab lab;
  Named named;
  Spread level;
  std::vector<Lab> fan;        // the 10, 50 and 90 % colours, ordered by lightness
  double contrast_levels = 0;  // white against pigmented fibres, absolute; 0 where only one kind is there
  double porosity = 1;
  double condition_left = 1;  // 1 fresh … 0 spent (M16)
};

struct Assessment {
  std::vector<ZoneColour> zones;  // document order
  Problems notes;                 // what to look at again: "read_on_dry_hair", "history_unknown" …
};

// Checks every reading (ranges, shares adding to 1, spans that do not overlap) and predicts nothing yet.
// Returns problems with their place; an empty list means that every later verb accepts the head.
Problems check(const Head& head);

// True where the wet stretch was not tested or reached 40 % and returned (common practice).
bool stretch_passed(const Span& span);

// Requires check(head).empty(). Colours with their spread over 64 scenarios.
Assessment assess(const Head& head);

}  // namespace strandline
