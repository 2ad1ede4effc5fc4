#include <memory>

#include "src/print/advice.h"
#include "src/visit_command.h"

namespace strandline::cli {

void add_review(CLI::App& app, Session& session) {
  add_visit_command(app, session, "review", "your own bowls beside the best, the smallest change, wrong readings",
                    [](const VisitFlags& flags, Session& s) {
                      return run_visit(
                          flags, s, [](const auto& asked, const auto& effort) { return salon::review(asked, effort); },
                          [&](const wire::ReviewAnswer& a, const Visit& visit) { print_review(a, visit, s.io.out); });
                    });
}

void add_convert(CLI::App& app, Session& session) {
  const auto range = std::make_shared<std::string>();
  CLI::App* command = add_visit_command(
      app, session, "convert", "the result of your own bowls, from another range of the shelf",
      [range](const VisitFlags& flags, Session& s) {
        return run_visit(
            flags, s, [&](const auto& asked, const auto& effort) { return salon::convert(asked, *range, effort); },
            [&](const wire::RemadeAnswer& a, const Visit& v) { print_remade(a, v.shelf, s.io.out); });
      });
  command->add_option("--range", *range, "id of the range to convert to")->required();
}

void add_substitute(CLI::App& app, Session& session) {
  const auto product = std::make_shared<std::string>();
  CLI::App* command = add_visit_command(
      app, session, "substitute", "your own bowls without a product that ran out",
      [product](const VisitFlags& flags, Session& s) {
        return run_visit(
            flags, s, [&](const auto& asked, const auto& effort) { return salon::substitute(asked, *product, effort); },
            [&](const wire::RemadeAnswer& a, const Visit& v) { print_remade(a, v.shelf, s.io.out); });
      });
  command->add_option("--product", *product, "id of the product to do without")->required();
}

}  // namespace strandline::cli
