#include "src/print/problems.h"
#include "src/print/zones.h"
#include "src/visit_command.h"

namespace strandline::cli {

void add_assess(CLI::App& app, Session& session) {
  add_visit_command(app, session, "assess", "the head as read: colour, level and doubt of every zone",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s, [](const auto& asked, const auto&) { return salon::assess(asked); },
                          [&](const wire::AssessAnswer& answer, const Visit&) {
                            print_today(answer.zones, paint_for(flags, s.io), s.io.out);
                            s.io.out << '\n';
                            print_lines(answer.notes, "  ", s.io.out);
                          });
                    });
}

}  // namespace strandline::cli
