#include "src/print/bowls.h"

#include <algorithm>
#include <cmath>
#include <ostream>

#include "en/sentences.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "strandline/wire/answer_fields.h"

namespace strandline::cli {

namespace {

void print_limits(const law::LimitReport& limits, std::ostream& out) {
  out << "    limits of use: " << en::label(wire::word_of(limits.overall)) << '\n';
  for (const law::LimitResult& r : limits.entries) {
    if (r.status == law::Status::within) continue;
    out << "      " << printable(r.substance.empty() ? r.entry : r.substance) << ": "
        << en::label(wire::word_of(r.status));
    if (r.cap) out << " (at most " << number(*r.cap, 2) << " % on the head)";
    out << '\n';
  }
}

// "without it 0.6 levels lighter, warmer"
void print_effects(const wire::BowlView& bowl, std::ostream& out) {
  constexpr double kSmall = 0.05, kTone = 1;  // levels; a*b* units
  for (const PartEffect& e : bowl.effects) {
    std::string name = e.product;
    for (const wire::PartView& part : bowl.parts)
      if (part.product == e.product && !part.name.empty()) name = part.name;
    out << "    without " << printable(name) << ":";
    const char* sep = " ";
    auto say = [&](const std::string& words) { out << sep << words, sep = ", "; };
    if (std::abs(e.level_without) >= kSmall)
      say(number(std::abs(e.level_without), 1) + (e.level_without > 0 ? " levels lighter" : " levels darker"));
    if (std::abs(e.warm_without) >= kTone) say(e.warm_without > 0 ? "warmer" : "cooler");
    if (std::abs(e.red_without) >= kTone) say(e.red_without > 0 ? "redder" : "greener");
    say(e.loss_without > 0 ? number(e.loss_without, 2) + " levels further off" : "no further off");
    out << '\n';
  }
}

// "level read 0.5 levels darker"
std::string misread(const Turn& turn) {
  if (turn.reading == "white")
    return number(100 * std::abs(turn.by), 0) + (turn.by > 0 ? " points more white" : " points less white");
  if (turn.reading == "porosity")
    return number(std::abs(turn.by), 0) + (turn.by > 0 ? " step more porous" : " step less porous");
  return number(std::abs(turn.by), 1) + (turn.by > 0 ? " levels lighter" : " levels darker");
}

std::string worse_by(double levels) {
  if (std::abs(levels) < 0.005) return "as near";
  return number(std::abs(levels), 2) + (levels > 0 ? " levels further off" : " levels nearer");
}

// The next best formulas, and the readings that would put the first of them in front.
void print_others(const wire::BowlView& bowl, const Shelf& shelf, std::ostream& out) {
  constexpr std::size_t kTold = 3;
  if (const double gap = bowl.objective - bowl.certified_objective; gap > 0.005 && !bowl.certified.shares.empty())
    out << "    the plainest of what no reading tells apart; nearest of all by " << number(gap, 2)
        << " levels: " << recipe_text(bowl.certified, shelf) << '\n';
  for (std::size_t i = 0; i < std::min(kTold, bowl.others.size()); ++i)
    out << "    " << (i == 0 ? "next plainest, " : "then, ") << worse_by(bowl.others[i].objective - bowl.objective)
        << ": " << recipe_text(bowl.others[i].recipe, shelf) << '\n';
  for (const Turn& turn : bowl.turns)
    out << "    Were the hair " << misread(turn) << " than it was read, the next best would be "
        << number(turn.better_by, 2) << " levels better.\n";
}

}  // namespace

void print_bowl(const wire::BowlView& bowl, const Shelf& shelf, std::ostream& out) {
  out << "\n  Bowl " << printable(bowl.label) << ": "
      << printable(bowl.range_name.empty() ? bowl.range : bowl.range_name) << ", " << number(bowl.minutes, 0)
      << " minutes from the last touch\n";
  Table table({"  weigh", ">grams", "known by"});
  for (const wire::PartView& part : bowl.parts) {
    table.row({"  " + printable(part.name.empty() ? part.product : part.name), number(part.grams, 1),
               std::string(part.known_by ? en::label(wire::word_of(*part.known_by)) : "")});
  }
  table.row({"  together", number(bowl.grams, 1), ""});
  table.print(out);
  out << "    goes on:";
  for (std::size_t i = 0; i < bowl.zones.size(); ++i) out << (i ? ", " : " ") << printable(bowl.zones[i]);
  out << "\n    peroxide on the head: " << number(bowl.on_head_peroxide_percent, 2)
      << " %;  cost: " << number(bowl.cost, 2) << ' ' << printable(shelf.currency) << '\n';
  print_limits(bowl.limits, out);
  print_lines(bowl.why, "    ", out);
  print_effects(bowl, out);
  print_others(bowl, shelf, out);
}

void print_bowls(const wire::FormulateAnswer& answer, const Shelf& shelf, std::ostream& out) {
  for (const wire::BowlView& bowl : answer.bowls) print_bowl(bowl, shelf, out);
}

void print_summary(const wire::FormulateAnswer& answer, std::ostream& out) {
  out << "\n  Together " << number(answer.grams, 1) << " g, " << number(answer.cost, 2) << ' '
      << printable(answer.currency) << ".\n";
  print_lines(answer.why, "  ", out);
  print_lines(answer.notes, "  ", out);
  for (const wire::AlternativeView& a : answer.alternatives) {
    const double worse = a.objective - answer.report.objective;
    out << "  - " << en::label(a.axis) << ", " << number(std::abs(worse), 2)
        << (worse < 0 ? " levels nearer, " : " levels worse, ") << number(a.cost, 2) << ' '
        << printable(answer.currency) << ":";
    for (const wire::BowlView& bowl : a.bowls) {
      out << " [" << printable(bowl.label);
      for (const wire::PartView& part : bowl.parts)
        out << "; " << number(part.grams, 1) << " g " << printable(part.name.empty() ? part.product : part.name);
      out << ']';
    }
    out << '\n';
  }
  const SearchReport& r = answer.report;
  if (r.recipes > 0) {
    out << "  Search: " << r.recipes << " recipes, " << en::label(r.stopped) << "; expected error "
        << number(r.objective, 3) << " levels, no mix considered is below " << number(r.bound, 3) << ".\n";
    out << "  Asked: " << r.zones << " zones in " << r.groups << " groups, " << r.settings << " settings, "
        << r.scenarios << " scenarios, at most " << r.bowls_most << " bowls. Used: " << r.sets << " sets of groups, "
        << r.boxes << " boxes and " << r.bounds << " single recipes bounded, " << r.evaluations << " evaluations.\n";
    if (r.plain_gap > 0.005) out << "  " << number(r.plain_gap, 2) << " levels of it are for plain formulas.\n";
    if (r.uneven > 0.005) out << "  " << number(r.uneven, 2) << " levels of it are for the lines where spans meet.\n";
  }
}

}  // namespace strandline::cli
