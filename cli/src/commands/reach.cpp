#include "src/print/reach.h"

#include "src/print/verdicts.h"
#include "src/visit_command.h"

namespace strandline::cli {

void add_reach(CLI::App& app, Session& session) {
  add_visit_command(app, session, "reach", "what each zone can become today with this shelf, level by level",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s, [](const auto& asked, const auto& effort) { return salon::reach(asked, effort); },
                          [&](const wire::ReachAnswer& answer, const Visit& visit) {
                            print_verdicts(answer.rules, s.io.out);
                            print_reach(answer, visit.aims, s.io.out);
                          });
                    });
}

}  // namespace strandline::cli
