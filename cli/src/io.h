// Where a command reads and writes; tests hand in strings.
#pragma once

#include <iosfwd>

namespace strandline::cli {

struct Io {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
  bool true_colour = false;  // `out` is a terminal that shows 24-bit colour
};

// What a command returns to its caller.
enum Exit : int {
  done = 0,
  failed = 1,   // something outside the document: a file, a port, the disk
  refused = 2,  // the document or the words on the command line
  stopped = 3,  // a rule stops the visit or its own bowls: the answer says which, and holds nothing to mix
};

}  // namespace strandline::cli
