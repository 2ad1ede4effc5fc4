#pragma once

#include <string>
#include <vector>

#include "src/io.h"

namespace strandline::cli {

// The whole command line, without the program's name. Returns the exit code.
int run(const std::vector<std::string>& arguments, Io& io);

}  // namespace strandline::cli
