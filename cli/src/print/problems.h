#pragma once

#include <iosfwd>
#include <string>

#include "strandline/result.h"

namespace strandline::cli {

// One entry per problem: where, what, and what to do.
void print_problems(const Problems& problems, const std::string& file, std::ostream& err);
// Why-lines and notes: one sentence each, where they point to a place it is named.
void print_lines(const Problems& lines, const std::string& indent, std::ostream& out);

}  // namespace strandline::cli
