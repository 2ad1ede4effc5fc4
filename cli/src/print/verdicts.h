// What the rules say, before anything is mixed.
#pragma once

#include <iosfwd>

#include "strandline/wire/answer.h"

namespace strandline::cli {

void print_verdicts(const wire::VerdictsView& verdicts, std::ostream& out);

}  // namespace strandline::cli
