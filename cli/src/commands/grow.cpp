#include <ostream>

#include "src/print/swatch.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "src/visit_command.h"

namespace strandline::cli {

namespace {

void print_growth(const wire::GrowAnswer& answer, const Paint& paint, std::ostream& out) {
  Table table({"area", "grows", "", "meets", "", ">apart", "shows after (10–90 %)"});
  for (const wire::RegrowthView& l : answer.lines)
    table.row({printable(l.area), swatch(l.natural_srgb, paint), named(l.natural_level, l.natural_tone),
               swatch(l.coloured_srgb, paint), named(l.coloured_level, l.coloured_tone),
               number(l.contrast_levels) + " levels",
               l.shows
                   ? number(l.weeks.p50, 0) + " weeks (" + number(l.weeks.p10, 0) + "–" + number(l.weeks.p90, 0) + ")"
                   : "draws no line"});
  table.print(out);
  out << "\n  Grown by then:";
  for (const wire::RegrowthLengthView& l : answer.lengths)
    out << "  " << number(l.weeks) << " weeks " << number(l.cm) << " ± " << number(l.cm_sd) << " cm";
  out << '\n';
}

}  // namespace

void add_grow(CLI::App& app, Session& session) {
  add_visit_command(
      app, session, "grow", "the line that regrowth draws after the document's own bowls, and when it shows",
      [](const VisitFlags& flags, Session& s) {
        return run_visit(
            flags, s, [](const auto& asked, const auto& effort) { return salon::grow(asked, effort); },
            [&](const wire::GrowAnswer& a, const Visit&) { print_growth(a, paint_for(flags, s.io), s.io.out); });
      });
}

}  // namespace strandline::cli
