// The fit written back into knowledge/.
#pragma once

#include "fit.h"

namespace strandline::calibrate {

// Sets value, sd and source of every fitted constant in its file below `folder`, the level anchors, and the correlation
// of the constants that vary from scenario to scenario. Throws std::runtime_error with the path on failure.
void write_knowledge(const Problem& problem, const Fit& fit, const std::string& folder, const std::string& command);

}  // namespace strandline::calibrate
