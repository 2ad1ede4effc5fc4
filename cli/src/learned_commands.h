// Commands of what was measured and learned.
#pragma once

#include "src/commands.h"

namespace strandline::cli {

void add_learned(CLI::App& app, Session& session);
void add_measure(CLI::App& app, Session& session);

}  // namespace strandline::cli
