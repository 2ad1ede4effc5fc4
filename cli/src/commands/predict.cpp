#include "en/cautions.h"
#include "src/print/problems.h"
#include "src/print/verdicts.h"
#include "src/print/zones.h"
#include "src/visit_command.h"

namespace strandline::cli {

void add_predict(CLI::App& app, Session& session) {
  add_visit_command(app, session, "predict", "what the document's own bowls do on this head",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s, [](const auto& asked, const auto& effort) { return salon::predict(asked, effort); },
                          [&](const wire::PredictAnswer& answer, const Visit& visit) {
                            en::print_cautions(visit, s.io.out);
                            print_verdicts(answer.rules, s.io.out);
                            print_zones(answer.zones, paint_for(flags, s.io), s.io.out);
                            print_doubt(answer.zones, s.io.out);
                            s.io.out << '\n';
                            print_lines(answer.notes, "  ", s.io.out);
                          });
                    });
}

}  // namespace strandline::cli
