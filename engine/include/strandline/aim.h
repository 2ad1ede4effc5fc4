// The wanted result, zone by zone.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/head.h"
#include "strandline/result.h"
#include "strandline/shelf.h"

namespace strandline {

// Exactly one of: a shade of the shelf (its swatch, or what its name promises), a level with a tone word, or L*a*b*
// (D65/10°, sphere).
struct ZoneAim {
  std::string zone;  // "area/span"; "*" = every zone not named
  std::string shade;
  std::optional<double> level;
  Tone tone = Tone::natural;
  std::optional<Lab> lab;
  bool leave = false;               // nothing is to touch this zone
  std::optional<Tone> second_tone;  // mixed into `tone`, as in violet-ash; only beside a level
};

struct Target {
  std::string zone;
  Lab lab{};  // D65/10°, sphere
  double level = 0;
  Tone tone = Tone::natural;
  bool leave = false;
  double weight = 1;  // how much this zone counts
  std::optional<Tone> second_tone;
};

}  // namespace strandline
