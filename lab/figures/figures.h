// Each figure of docs/model.md by its file name.
#pragma once

#include <map>
#include <string>

#include "chart.h"

namespace strandline::figures {

std::map<std::string, Chart> all_figures();

}  // namespace strandline::figures
