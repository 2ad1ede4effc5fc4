// Else one bowl: zones of one wish that the search gave bowls of their own, where one formula serves them as well.
#pragma once

#include "formulate/choose.h"

namespace strandline {

// Bowls of one class whose zones have the same wish, and white alike, become one where a formula no less plain lies
// within the indifference of what both cost at best. What is certified stays that of bowls kept apart, as the bound is.
void share_bowls(const ChoiceInput& in, Choice& choice);

}  // namespace strandline
