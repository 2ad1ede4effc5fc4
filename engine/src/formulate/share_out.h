// One tube for several bowls: what each may have of it.
#pragma once

#include "formulate/choose.h"

namespace strandline {

// Where the bowls together need more of a product than is there: of the formulas kept for each the combination with the
// least sum of objectives that the shelf can pour, the price of unevenness counted after. Gives the ids of what was
// shared out: none where nothing runs short, or where no combination can be poured; then nothing is changed.
std::vector<std::string> share_out(const ChoiceInput& in, Choice& choice);

}  // namespace strandline
