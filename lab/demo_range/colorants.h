// Invented colorants: round yellow, red, violet and blue bands.
#pragma once

#include "strandline/spectrum.h"

namespace strandline::demo {

// One pure band, `strength` = optical depth at its peak. Bands: "yellow", "red", "violet", "blue", "green" (two bands).
Spectrum band(const char* name, double strength);

}  // namespace strandline::demo
