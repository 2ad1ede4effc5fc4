// reach.ms: what one zone can become, every recipe of up to two shades, one core.
#include "invented.h"
#include "measure.h"
#include "strandline/reach.h"

int main() {
  using namespace strandline;
  const Shelf shelf = scoreboard::invented_shelf(100, {3, 6, 9, 12}, {1});
  const scoreboard::Wanted wanted = scoreboard::invented_zone(1);
  double recipes = 0;
  const double ms = scoreboard::median_ms(5, [&] {
    const auto zones = reach(wanted.head, shelf, {});
    if (!zones) std::exit(1);
    recipes = static_cast<double>((*zones)[0].recipes);
  });
  char note[120];
  std::snprintf(note, sizeof note, "one zone, 100 shades, 4 strengths, %.0f recipes, 80 wishes, one core, median of 5",
                recipes);
  scoreboard::print({{"reach.ms", ms, "ms", note}});
}
