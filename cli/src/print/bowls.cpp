#include "src/print/bowls.h"

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

}  // namespace

void print_bowl(const wire::BowlView& bowl, const std::string& currency, std::ostream& out) {
  out << "\n  Bowl " << printable(bowl.label) << ": "
      << printable(bowl.range_name.empty() ? bowl.range : bowl.range_name) << ", " << number(bowl.minutes, 0)
      << " minutes from the last touch\n";
  Table table({"  weigh", ">grams"});
  for (const wire::PartView& part : bowl.parts) {
    table.row({"  " + printable(part.name.empty() ? part.product : part.name), number(part.grams, 1)});
  }
  table.row({"  together", number(bowl.grams, 1)});
  table.print(out);
  out << "    goes on:";
  for (std::size_t i = 0; i < bowl.zones.size(); ++i) out << (i ? ", " : " ") << printable(bowl.zones[i]);
  out << "\n    peroxide on the head: " << number(bowl.on_head_peroxide_percent, 2)
      << " %;  cost: " << number(bowl.cost, 2) << ' ' << printable(currency) << '\n';
  print_limits(bowl.limits, out);
  print_lines(bowl.why, "    ", out);
  print_effects(bowl, out);
}

void print_bowls(const wire::FormulateAnswer& answer, std::ostream& out) {
  for (const wire::BowlView& bowl : answer.bowls) print_bowl(bowl, answer.currency, out);
}

void print_summary(const wire::FormulateAnswer& answer, std::ostream& out) {
  out << "\n  Together " << number(answer.grams, 1) << " g, " << number(answer.cost, 2) << ' '
      << printable(answer.currency) << ".\n";
  print_lines(answer.why, "  ", out);
  print_lines(answer.notes, "  ", out);
  for (const wire::AlternativeView& a : answer.alternatives) {
    out << "  - " << en::label(a.axis) << ", " << number(a.objective - answer.report.objective, 2) << " levels worse, "
        << number(a.cost, 2) << ' ' << printable(answer.currency) << ":";
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
        << number(r.objective, 3) << " levels, no recipe of the searched set is below " << number(r.bound, 3) << ".\n";
  }
}

}  // namespace strandline::cli
