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
  out << "  - A serious allergic reaction is possible, even after years without one; phenylenediamines and "
         "toluenediamines are\n"
         "    common causes. Not on anyone under 16. Not after any earlier reaction to hair colour or to a "
         "black-henna tattoo;\n"
         "    such a tattoo raises the risk even without a reaction.\n"
         "  - Not with a rash on the face or a sensitive, irritated or broken scalp. Gloves on.\n"
         "  - Keep it out of the eyes, and off lashes and brows. If it gets in, rinse at once with plenty of water; "
         "take "
         "contact\n"
         "    lenses out if that is easy; then see a doctor.\n"
         "  - Lightener: no heat on the scalp, look from 15 minutes on, off at the maker's longest time, rinse at "
         "once if it burns.\n"
         "  - Mix powder with good ventilation; do not breathe it. Lightener powder can cause lasting asthma, also in "
         "the colourist.\n"
         "  - The product's own instructions, local law and your training come first. A prediction is no "
         "promise: try a\n"
         "    strand where you are not sure.\n";
}

}  // namespace strandline::cli::en
