#include "en/cautions.h"
#include "src/print/problems.h"
#include "src/print/timeline.h"
#include "src/visit_command.h"
#include "strandline/pipeline.h"

namespace strandline::cli {

void add_schedule(CLI::App& app, Session& session) {
  add_visit_command(app, session, "schedule", "the clock of the visit, from its own bowls or from a plan",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s,
                          [](const auto& asked, const auto& effort) { return salon::schedule(asked, effort); },
                          [&](const Timeline& timeline, const Visit& visit) {
                            print_lines(stops(visit), "  ", s.io.out);
                            en::print_cautions(visit, s.io.out);
                            print_timeline(timeline, s.io.out);
                          });
                    });
}

}  // namespace strandline::cli
