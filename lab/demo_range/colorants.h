// Invented colorants: a broad brown and round yellow, red, violet and blue bands.
#pragma once

#include "strandline/colour.h"
#include "strandline/spectrum.h"

namespace strandline::demo {

// Optical depth that dyes white hair to `wanted` (D65/10°): as much of the broad brown as leaves every other colorant
// ≥ 0, then the bands. `miss` receives the remaining ΔE00.
Spectrum dye_for(const Lab& wanted, double* miss);

// One pure band, `strength` = optical depth at its peak. Bands: "yellow", "red", "violet", "blue", "green" (two bands).
Spectrum band(const char* name, double strength);

}  // namespace strandline::demo
