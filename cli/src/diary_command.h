// clients list, everything, erase, due.
#pragma once

#include "src/commands.h"

namespace strandline::cli {

void add_diary(CLI::App& app, Session& session);

}  // namespace strandline::cli
