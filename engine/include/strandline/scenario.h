// Doubt as points (M13): readings and constants have a joint distribution; a scenario is one draw of all of them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "generated/constants.h"
#include "strandline/fibre.h"
#include "strandline/head.h"

namespace strandline {

// The fibre populations of one zone in one scenario. Shares add to 1.
struct ZoneState {
  std::vector<double> shares;
  std::vector<Fibre> fibres;
};

struct ZoneDraws {
  std::string id;
  double from_cm = 0, to_cm = 0;
  std::vector<std::string> names;
  std::vector<FibreKind> kinds;
  double speed = 1;        // of lightening, times the head's own; from a strand test
  double speed_doubt = 1;  // what is left of the doubt of that speed, 0…1
  ZoneState nominal;
  std::vector<ZoneState> scenarios;
};

struct Draws {
  Constants nominal;
  std::vector<Constants> constants;  // one per scenario
  double name_doubt = 1;             // times the spread of what a shade's name alone leaves open
  std::vector<ZoneDraws> zones;      // document order
};

// Where doubt comes from. The first three are readings, the last is a name of the shelf, the rest constants.
enum class DoubtSource { level_reading, white_share, porosity, white_look, lightening, uptake, blend, shade_name };
inline constexpr int kDoubtSources = 8;

// `count` scenarios (a Latin hypercube with a fixed seed: each number's range is met evenly), the same for the same
// head on every machine. `doubt` multiplies every spread (1 = as read; 0 = all scenarios nominal); with `only`, every
// other source keeps its nominal value. Requires check(head) empty.
Draws draw(const Head& head, int count, double doubt = 1, std::optional<DoubtSource> only = {});

// "doubt_from_level_reading" …: the code of the sentence that names it.
std::string_view code(DoubtSource source);

// Standard normal quantile, p in (0, 1) (Wichura 1988, algorithm AS 241; relative error below 1e-15).
double normal_quantile(double p);

}  // namespace strandline
