#pragma once

#include <optional>
#include <string>

#include "strandline/wire/answer.h"

namespace strandline::cli {

// How colours are shown: under which light, and whether the terminal can.
struct Paint {
  std::string light = "daylight";
  bool true_colour = false;
};

// Six columns of the colour where the terminal shows it, else its number; an asterisk marks what no screen
// shows.
std::string swatch(const wire::UnderLights& colour, const Paint& paint);
// "5.3 gold", "4 violet-ash"
std::string named(double level, Tone tone, std::optional<Tone> second = {});
// "43.2/8.1/14.9"
std::string lab_text(const Lab& lab);

}  // namespace strandline::cli
