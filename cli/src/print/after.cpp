#include "src/print/after.h"

#include <ostream>

#include "src/print/problems.h"
#include "src/print/text.h"

namespace strandline::cli {

void print_after(const Afterwards& after, std::ostream& out) {
  const auto from_to = [&](double from, double until) {
    out << number(from, 0);
    if (until > from) out << '-' << number(until, 0);
  };
  if (after.told.empty() && after.rebook.until <= 0) return;
  out << "\n  Afterwards\n";
  print_lines(after.told, "  ", out);
  if (after.rebook.until > 0) {
    out << "  Come again in ";
    from_to(after.rebook.from, after.rebook.until);
    out << " weeks.";
  }
  if (after.visits_until > 0) {
    out << (after.rebook.until > 0 ? " " : "  ") << "Visits with this one: ";
    from_to(after.visits_from, after.visits_until);
    out << '.';
  }
  if (!after.next_test.empty()) out << " The skin test is too old from " << printable(after.next_test) << " on.";
  out << '\n';
}

}  // namespace strandline::cli
