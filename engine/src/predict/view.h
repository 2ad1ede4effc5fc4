// What a zone's fibres look like, one by one and together.
#pragma once

#include <vector>

#include "strandline/assess.h"
#include "strandline/scenario.h"

namespace strandline {

struct ZoneView {
  Lab lab;
  std::vector<Lab> populations;
  double contrast = 0;  // |L* of the white fibres − L* of the pigmented|, 0 where one kind is missing
  Spectrum reflectance{};
  std::vector<Spectrum> reflectances;
};

ZoneView view(const ZoneState& state, const std::vector<FibreKind>& kinds, const Constants& constants);

// The level a colourist looks at: that of the pigmented strands, of all where there are none; 1…10.
double shown_level(const ZoneState& state, const std::vector<FibreKind>& kinds, const Constants& constants);

// The nominal look with its spread over the scenarios. `scenario_colours` (optional) receives every scenario's view.
ZoneColour zone_colour(const ZoneDraws& zone, const Draws& draws, std::vector<ZoneView>* scenario_views = nullptr);

}  // namespace strandline
