// What strands tried beforehand tell of the hair they were taken from.
#pragma once

#include "strandline/head.h"
#include "strandline/shelf.h"

namespace strandline {

// Every span whose strand was lightened for a while and read, with how fast its hair lightens against the average: that
// speed which brings the range's usual mix to the level reached, 0.25…4. Other strands tell nothing of it. Requires
// check(head) and check(shelf) empty.
Head known_by_strands(Head head, const Shelf& shelf);

}  // namespace strandline
