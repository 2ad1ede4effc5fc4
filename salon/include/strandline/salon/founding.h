// The first start: a salon gets its owner and its shelf.
#pragma once

#include "strandline/salon/people.h"
#include "strandline/salon/shelves.h"

namespace strandline::salon {

// As People::found(); with the shelf "empty" new visits plan on one of the salon's own, called `title`, that holds
// nothing yet, instead of the invented one.
Result<SignedIn> found_salon(People& people, Shelves& shelves, const Founding& founding, const std::string& title);

}  // namespace strandline::salon
