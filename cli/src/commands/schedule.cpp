#include <memory>
#include <optional>

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

void add_replan(CLI::App& app, Session& session) {
  auto now = std::make_shared<std::optional<double>>();
  CLI::App* command =
      add_visit_command(app, session, "replan", "the clock of a visit that has begun, planned anew from its marks",
                        [now](const VisitFlags& flags, Session& s) {
                          return run_visit(
                              flags, s,
                              [&](wire::ReadVisit asked, const auto&) {
                                if (*now) asked.options.now_min = **now;
                                return salon::replan(asked);
                              },
                              [&](const Replanned& answer, const Visit&) {
                                print_lines(answer.notes, "  ", s.io.out);
                                for (const auto& zone : answer.too_late)
                                  print_lines({{"does_not_fit", "", {{"zone", zone}}}}, "  ", s.io.out);
                                for (const auto& zone : answer.fits_without)
                                  print_lines({{"in_time_without", "", {{"zone", zone}}}}, "  ", s.io.out);
                                print_timeline(answer.timeline, s.io.out);
                              });
                        });
  command->add_option("--now", *now, "minutes since the visit began")->check(between(0, 1440));
}

}  // namespace strandline::cli
