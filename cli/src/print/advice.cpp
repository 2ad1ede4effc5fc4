#include "src/print/advice.h"

#include <ostream>

#include "en/sentences.h"
#include "src/print/bowls.h"
#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"

namespace strandline::cli {

namespace {

std::string product_name(const Visit& visit, const std::string& id) {
  const Product* p = find_product(visit.shelf, id);
  return printable(p ? p->name : id);
}

void print_change(const Bowl& bowl, const Visit& visit, std::ostream& out) {
  out << "    so:";
  const char* sep = " ";
  for (const Part& part : bowl.formula.parts)
    out << sep << number(part.grams, 1) << " g " << product_name(visit, part.product), sep = ", ";
  out << "; " << number(bowl.formula.minutes, 0) << " minutes\n";
}

std::string by_words(const wire::ReactionView& r) {
  const std::string what(en::label(r.reading));
  if (r.reading == "white") return what + ' ' + signed_number(100 * r.by, 0) + " points";
  return what + ' ' + signed_number(r.by, 1);
}

}  // namespace

void print_review(const wire::ReviewAnswer& answer, const Visit& visit, std::ostream& out) {
  for (const wire::BowlReviewView& b : answer.bowls) {
    out << "\n  Bowl " << printable(b.label) << ": ";
    if (!b.notes.empty()) {
      out << '\n';
      print_lines(b.notes, "    ", out);
    } else if (b.best_recipe.range.empty()) {
      out << "there is no target for its zones, or no bowl may serve them.\n";
    } else {
      out << "expected error " << number(b.objective, 2) << " levels; the best bowl of this shelf has "
          << number(b.best, 2) << (b.fine ? ". It is fine as it is.\n" : ".\n");
      if (!b.fine) out << "    best: " << recipe_text(b.best_recipe, visit.shelf) << '\n';
    }
    print_lines(b.broken, "    ", out);
    print_lines(b.changes, "    ", out);
    if (b.change) {
      print_change(*b.change, visit, out);
      out << "    expected error then " << number(*b.change_objective, 2) << " levels\n";
    }
    for (const PartEffect& e : b.effects)
      out << "    without " << product_name(visit, e.product) << ": " << signed_number(e.level_without, 1)
          << " levels, " << signed_number(e.loss_without, 2) << " levels of error\n";
  }
  if (answer.reactions.empty()) return;
  out << "\n  If a reading is wrong:\n";
  Table table({"  zone", "read wrong by", "comes out", ">levels"});
  for (const wire::ReactionView& r : answer.reactions)
    table.row(
        {"  " + printable(r.zone), by_words(r), named(r.looks.level, r.looks.tone), signed_number(r.level_moves, 1)});
  table.print(out);
}

void print_remade(const wire::RemadeAnswer& answer, const Shelf& shelf, std::ostream& out) {
  if (answer.bowls.empty()) out << "  No bowl holds it.\n";
  for (const wire::RemadeView& r : answer.bowls) {
    out << "\n  Instead of bowl " << printable(r.label) << ":\n";
    print_lines(r.notes, "    ", out);
    print_lines(r.changes, "    ", out);
    if (!r.bowl) continue;
    print_bowl(*r.bowl, shelf, out);
    Table table({"  zone", "before", "after", ">ΔE00"});
    for (const wire::ZoneDifferenceView& z : r.zones)
      table.row({"  " + printable(z.zone), named(z.before.level, z.before.tone), named(z.after.level, z.after.tone),
                 number(z.delta_e_2000, 1)});
    table.print(out);
  }
}

}  // namespace strandline::cli
