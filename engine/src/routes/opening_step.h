// The first step of a way: what makes each zone ready for its colour, side by side on one head.
#pragma once

#include <map>

#include "mix/situation.h"
#include "routes/best_way.h"
#include "strandline/route.h"

namespace strandline {

// By zone. Zones that are not named get nothing before their colour.
using Openings = std::map<std::string, Opening>;

// Zones of one opening and one kind (at the scalp or off it, woven or not) share a bowl; the next kind finds what the
// one before left on the shelf. `now` becomes the hair after it. None where nothing would bring more than it costs.
std::optional<RouteStep> opening_step(const RouteTask& task, Situation& now, const Openings& openings, char& label);

// Where the first step lies in packets alone, the hair between them takes its colour meanwhile (common practice): bowls
// of the last step that touch none of its zones move beside it, and say so.
void move_beside_packets(const Head& head, RouteStep& first, RouteStep& last);

}  // namespace strandline
