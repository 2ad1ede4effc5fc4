// The wanted result, zone by zone.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/head.h"
#include "strandline/result.h"
#include "strandline/shelf.h"

namespace strandline {

// Exactly one of: a shade of the shelf (its swatch, or what its name promises), a level with a tone word, L*a*b*
// (D65/10°, sphere), what another zone looks like today, so many levels lighter than it looks today, its own colour
// with white blended in, or a shadow. A zone that no wish names stays as it is.
struct ZoneAim {
  std::string zone;  // "area/span"; "*" = every zone not named
  std::string shade;
  std::optional<double> level;
  Tone tone = Tone::natural;
  std::optional<Lab> lab;
  bool leave = false;                 // nothing is to touch this zone
  std::optional<Tone> second_tone;    // mixed into `tone`, as in violet-ash; only beside a level
  std::string match;                  // "area/span": as that zone looks today
  std::optional<double> brighter_by;  // levels lighter than today, in `tone`
  std::optional<double> blend;        // 0…1 of what tells white from the rest goes, softly; the own colour stays
  std::optional<double> shadow;       // levels darker than the next span of its area, on purpose, in `tone`
};

struct Target {
  std::string zone;
  Lab lab{};  // D65/10°, sphere
  double level = 0;
  Tone tone = Tone::natural;
  bool leave = false;
  double weight = 1;  // how much this zone counts
  std::optional<Tone> second_tone;
  bool blend = false;  // white is toned, not covered
  double shadow = 0;   // levels darker than the next span, on purpose
};

}  // namespace strandline
