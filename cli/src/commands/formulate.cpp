#include "en/cautions.h"
#include "src/print/bowls.h"
#include "src/print/verdicts.h"
#include "src/print/zones.h"
#include "src/visit_command.h"

namespace strandline::cli {

void add_formulate(CLI::App& app, Session& session) {
  add_visit_command(app, session, "formulate", "what to mix from the shelf for the aims of the document",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s,
                          [](const auto& asked, const auto& effort) { return salon::formulate(asked, effort); },
                          [&](const wire::FormulateAnswer& answer, const Visit& visit) {
                            print_verdicts(answer.rules, s.io.out);
                            print_zones(answer.zones, paint_for(flags, s.io), s.io.out);
                            print_doubt(answer.zones, s.io.out);
                            en::print_cautions(visit, s.io.out);
                            print_bowls(answer, visit.shelf, s.io.out);
                            print_summary(answer, s.io.out);
                          });
                    });
}

}  // namespace strandline::cli
