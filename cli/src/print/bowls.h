#pragma once

#include <iosfwd>

#include "src/print/swatch.h"
#include "strandline/wire/answer.h"

namespace strandline::cli {

void print_bowl(const wire::BowlView& bowl, const Shelf& shelf, std::ostream& out);
// Each bowl with its grams in the order they are weighed, where it goes, and why.
void print_bowls(const wire::FormulateAnswer& answer, const Shelf& shelf, std::ostream& out);
// Totals, reasons, notes and why the search stopped.
void print_summary(const wire::FormulateAnswer& answer, std::ostream& out);
// The way over more than one step that stands first, whole.
void print_recommended(const wire::PlanAnswer& answer, const Shelf& shelf, const Paint& paint, std::ostream& out);
// The other ways, a line each.
void print_routes(const wire::PlanAnswer& answer, std::ostream& out);
// "5/8 7 natural, 3/8 7 ash; 6 %; 1:1; 35 min"
std::string recipe_text(const Recipe& recipe, const Shelf& shelf);

}  // namespace strandline::cli
