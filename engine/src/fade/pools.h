// Dye on a fibre by the class that left it, so that each can fade by its own rates.
#pragma once

#include "predict/steps.h"

namespace strandline {

struct DyePools {
  Spectrum permanent{}, demi{}, direct{};  // optical depth; their sum is the fibre's dye
};

// One per fibre of the nominal zone and of every scenario.
struct ZonePools {
  std::vector<DyePools> nominal;
  std::vector<std::vector<DyePools>> scenarios;
};

// Colour already there belongs to the class that its origin names: tint, direct dye, or the toner on lightened hair.
ZonePools pools_as_read(const ZoneDraws& zone, const Span& span);

// Applies every step that names the zone, and books what each adds and takes.
void apply(const std::vector<ReadyStep>& steps, ZoneDraws& zone, const Draws& draws, ZonePools& pools);

}  // namespace strandline
