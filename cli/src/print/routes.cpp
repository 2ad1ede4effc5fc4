#include <cmath>
#include <ostream>

#include "en/sentences.h"
#include "src/print/bowls.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "src/print/timeline.h"
#include "src/print/zones.h"

namespace strandline::cli {

namespace {

void print_table(const RouteStep::IfCheckShows& table, const Shelf& shelf, std::ostream& out) {
  out << "    Bowl " << printable(table.bowl) << " by what the check shows on " << printable(table.zone) << ":\n";
  Table rows({"    level", ">likely", "mix"});
  for (const CheckChoice& c : table.choices)
    rows.row({"    " + number(c.level, 1), percent(c.likelihood),
              c.go_on ? "not yet: go on, within its time and the hair's condition" : recipe_text(c.recipe, shelf)});
  rows.print(out);
}

void print_whole(const wire::RouteView& route, const Shelf& shelf, const Paint& paint, std::ostream& out) {
  for (std::size_t v = 0; v < route.visits.size(); ++v) {
    const wire::RouteVisitView& visit = route.visits[v];
    if (route.visits.size() > 1) {
      out << "\n  Visit " << v + 1;
      if (visit.weeks_after_last > 0)
        out << ", " << number(visit.weeks_after_last, 0) << " weeks or more later; about "
            << number(visit.regrowth_cm.value, 1) << " cm have grown by then and are read anew";
      out << '\n';
    }
    for (const wire::RouteStepView& step : visit.steps) {
      out << "\n  " << en::label(step.kind) << (step.check_after ? ", then check the strand" : "");
      out << '\n';
      for (const wire::BowlView& bowl : step.bowls) print_bowl(bowl, shelf, out);
      for (const auto& table : step.if_check_shows) print_table(table, shelf, out);
    }
    out << '\n';
    print_zones(visit.zones, paint, out);
    print_timeline(visit.timeline, out);
  }
}

// What it opens with, and what it comes to beside the plan.
void print_line(const wire::RouteView& route, const wire::PlanAnswer& answer, std::ostream& out) {
  const double nearer = answer.plan.report.objective - route.objective;
  out << en::label(route.kind) << " first, ";
  if (answer.plan.bowls.empty())
    out << "no one bowl does this, ";
  else
    out << number(std::abs(nearer), 2)
        << (nearer >= 0 ? " levels nearer to the target, " : " levels further from the target, ");
  out << number(route.grams, 1) << " g, " << number(route.cost, 2) << ' ' << printable(answer.plan.currency) << ".\n";
  print_lines(route.why, "    ", out);
  print_lines(route.notes, "    ", out);
}

}  // namespace

std::string recipe_text(const Recipe& r, const Shelf& shelf) {
  std::string text;
  for (const Share& s : r.shares) {
    const Product* p = find_product(shelf, s.product);
    text += (text.empty() ? "" : ", ") + std::to_string(s.eighths) + "/8 " + printable(p ? p->name : s.product);
  }
  if (r.developer_percent > 0) text += "; " + number(r.developer_percent, 1) + " %, 1:" + number(r.ratio, 1);
  text += "; " + number(r.minutes, 0) + " min";
  // Shades of several ranges bear the same name.
  const Range* range = find_range(shelf, r.range);
  return printable(range ? range->name : r.range) + ": " + text;
}

void print_recommended(const wire::PlanAnswer& answer, const Shelf& shelf, const Paint& paint, std::ostream& out) {
  for (const wire::RouteView& route : answer.routes) {
    if (!route.recommended) continue;
    out << "\n  Recommended: ";
    print_line(route, answer, out);
    print_whole(route, shelf, paint, out);
    out << "\n  Instead, at once:\n";
    return;
  }
}

void print_routes(const wire::PlanAnswer& answer, std::ostream& out) {
  for (const wire::RouteView& route : answer.routes) {
    if (route.recommended) continue;
    out << "\n  Another way: ";
    print_line(route, answer, out);
  }
}

}  // namespace strandline::cli
