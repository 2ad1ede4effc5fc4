#include "en/cautions.h"
#include "src/print/after.h"
#include "src/print/bowls.h"
#include "src/print/timeline.h"
#include "src/print/verdicts.h"
#include "src/print/zones.h"
#include "src/visit_command.h"

namespace strandline::cli {

void add_plan(CLI::App& app, Session& session) {
  add_visit_command(app, session, "plan", "assess, aim, formulate and schedule in one answer",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s, [](const auto& asked, const auto& effort) { return salon::plan(asked, effort); },
                          [&](const wire::PlanAnswer& answer, const Visit& visit) {
                            print_verdicts(answer.plan.rules, s.io.out);
                            print_recommended(answer, visit.shelf, paint_for(flags, s.io), s.io.out);
                            print_zones(answer.plan.zones, paint_for(flags, s.io), s.io.out);
                            print_doubt(answer.plan.zones, s.io.out);
                            en::print_cautions(visit, s.io.out);
                            print_bowls(answer.plan, visit.shelf, s.io.out);
                            print_summary(answer.plan, s.io.out);
                            print_timeline(answer.timeline, s.io.out);
                            print_routes(answer, s.io.out);
                            print_after(answer.after, s.io.out);
                          });
                    });
}

}  // namespace strandline::cli
