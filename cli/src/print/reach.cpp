#include "src/print/reach.h"

#include <algorithm>
#include <cmath>
#include <ostream>

#include "src/print/problems.h"
#include "src/print/swatch.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "strandline/levels.h"

namespace strandline::cli {

namespace {

void print_nearest(const wire::ZoneReachView& zone, const ZoneAim& wish, std::ostream& out) {
  if (!wish.level || wish.leave || (wish.zone != "*" && wish.zone != zone.zone)) return;
  const Tone tone = wish.tone;
  for (const wire::ReachCellView& c : zone.cells) {
    if (c.tone != tone || c.level != std::round(*wish.level)) continue;
    const Named is = name_colour(c.nearest);
    out << "  Wished " << named(c.level, tone) << (c.reachable ? ": within reach.\n" : ": not today. Nearest ");
    if (c.reachable) continue;
    out << named(is.level, is.tone) << ".\n";
    print_lines(c.why, "    ", out);
  }
}

}  // namespace

void print_reach(const wire::ReachAnswer& answer, const std::vector<ZoneAim>& wishes, std::ostream& out) {
  for (const wire::ZoneReachView& zone : answer.zones) {
    out << "\n  " << printable(zone.zone) << '\n';
    std::vector<std::string> heads = {"  level"};
    for (int t = 0; t < kTones; ++t) heads.emplace_back(word(static_cast<Tone>(t)));
    Table table(heads);
    std::vector<std::string> row;
    for (const wire::ReachCellView& c : zone.cells) {
      if (row.empty()) row.push_back("  " + number(c.level, 0));
      row.emplace_back(c.reachable ? "●" : "·");
      if (row.size() == heads.size()) {
        table.row(row);
        row.clear();
      }
    }
    table.print(out);
    auto along = [&](const char* name, double Lab::* axis) {
      const auto [low, high] = std::minmax_element(zone.corners.begin(), zone.corners.end(),
                                                   [&](const Lab& x, const Lab& y) { return x.*axis < y.*axis; });
      out << name << number((*low).*axis, 0) << " to " << number((*high).*axis, 0);
    };
    along("  L* ", &Lab::l), along(", a* ", &Lab::a), along(", b* ", &Lab::b);
    out << '\n';
    for (const ZoneAim& wish : wishes) print_nearest(zone, wish, out);
  }
  out << "\n  ● can be had today in one bowl of up to two shades, seen at the reading as it stands; · cannot.\n";
}

}  // namespace strandline::cli
