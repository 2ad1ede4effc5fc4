// How long bowls are on the zones they serve.
#pragma once

#include "mix/groups.h"

namespace strandline {

// Minutes between the middle of a zone's application and its last touch, at the colourist's own pace.
double half_touch(const Head& head, const Area& area, const Span& span);

// All zones of the bowl for the same minutes from their last touch.
std::vector<OnZone> on_alike(const Head& head, const Bowl& bowl, double minutes);

// How long the bowl is on this zone; empty where it does not serve it.
std::optional<OnZone> on(const PlannedBowl& bowl, const std::string& zone);

// Minutes of a step beyond those of its formula, for each of these of the search's zones: what a judge of it asks for.
std::vector<double> longer_than_told(const Step& step, const std::vector<SearchZone>& zones,
                                     const std::vector<int>& served);

}  // namespace strandline
