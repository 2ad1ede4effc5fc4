#include "en/cautions.h"

#include <ostream>

#include "src/print/text.h"

namespace strandline::cli::en {

void print_cautions(const Visit& visit, std::ostream& out) {
  out << "\n  Before you start\n";
  if (visit.skin_test.empty()) {
    out << "  - No skin test is recorded. Ask for its date and its result; do one as the maker says, 48 "
           "hours ahead, and read\n"
           "    it. A clear test does not rule out a reaction.\n";
  } else {
    out << "  - Skin test recorded on " << printable(visit.skin_test)
        << ": was it read, with this maker's product? A clear test does not rule out a\n    reaction.\n";
  }
  out << "  - Hair colour can cause severe allergic reactions. Ask about earlier reactions and black-henna "
         "tattoos; none goes\n"
         "    on a person who had one, or on broken or irritated skin.\n"
         "  - Keep it out of the eyes; rinse at once if it gets there. Gloves on, air moving, never on "
         "lashes or brows unless\n"
         "    the product is made for them.\n"
         "  - Lightener: no heat on the scalp, look from 15 minutes on, off at its longest time, rinse at "
         "once if it burns.\n"
         "  - The product's own instructions, local law and your training come first. A prediction is no "
         "promise: try a\n"
         "    strand where you are not sure.\n";
}

}  // namespace strandline::cli::en
