// The corner marks of the card in a picture.
#pragma once

#include <vector>

#include "strandline/card.h"

namespace strandline::card {

struct Mark {
  double x = 0, y = 0;  // pixels
  double across = 0;    // of its outer ring
  int seen = 0;         // lines through it that told it
};

// What looks like a mark, those seen on most lines first; never more than twelve.
std::vector<Mark> marks_in(const Picture& picture);

}  // namespace strandline::card
