#include <memory>

#include "en/cautions.h"
#include "src/print/advice.h"
#include "src/print/verdicts.h"
#include "src/visit_command.h"

namespace strandline::cli {

void add_review(CLI::App& app, Session& session) {
  add_visit_command(app, session, "review", "your own bowls beside the best, the smallest change, wrong readings",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s, [](const auto& asked, const auto& effort) { return salon::review(asked, effort); },
                          [&](const wire::ReviewAnswer& a, const Visit& visit) {
                            en::print_cautions(visit, s.io.out);
                            print_verdicts(a.rules, s.io.out);
                            print_review(a, visit, s.io.out);
                          });
                    });
}

void add_convert(CLI::App& app, Session& session) {
  const auto range = std::make_shared<std::string>();
  CLI::App* command = add_visit_command(
      app, session, "convert", "the result of your own bowls, from another range of the shelf",
      [range](const VisitFlags& flags, Session& s) {
        return run_visit(
            flags, s, [&](const auto& asked, const auto& effort) { return salon::convert(asked, *range, effort); },
            [&](const wire::RemadeAnswer& a, const Visit& v) {
              en::print_cautions(v, s.io.out);
              print_remade(a, v.shelf, s.io.out);
            });
      });
  command->add_option("--range", *range, "id of the range to convert to")->required();
}

void add_substitute(CLI::App& app, Session& session) {
  const auto product = std::make_shared<std::string>();
  const auto weighed = std::make_shared<double>(0);
  CLI::App* command = add_visit_command(app, session, "substitute", "your own bowls without a product that ran out",
                                        [product, weighed](const VisitFlags& flags, Session& s) {
                                          return run_visit(
                                              flags, s,
                                              [&](wire::ReadVisit asked, const auto& effort) {
                                                if (*weighed > 0) asked.options.weighed_g = *weighed;
                                                return salon::substitute(asked, *product, effort);
                                              },
                                              [&](const wire::RemadeAnswer& a, const Visit& v) {
                                                en::print_cautions(v, s.io.out);
                                                print_remade(a, v.shelf, s.io.out);
                                              });
                                        });
  command->add_option("--product", *product, "id of the product to do without")->required();
  command->add_option("--weighed", *weighed, "grams of it that are in the bowl already")->check(between(0, 5000));
}

}  // namespace strandline::cli
