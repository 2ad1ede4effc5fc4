#include "src/print/zones.h"

#include <ostream>

#include "src/print/problems.h"
#include "src/print/table.h"
#include "src/print/text.h"

namespace strandline::cli {

namespace {

std::string spread(const Spread& s) { return number(s.p10, 1) + "–" + number(s.p90, 1); }

// A number only where the range has measured results.
std::string landing(const wire::ZoneView& zone) {
  if (!zone.likelihood) return "no aim";
  if (!zone.show_likelihood) return "untested here: strand test first";
  return percent(*zone.likelihood) + (zone.simulated ? " (simulated)" : "");
}

void add_populations(const wire::ColourView& colour, const Paint& paint, Table& table) {
  if (colour.populations.size() < 2) return;
  for (const wire::PopulationView& p : colour.populations) {
    table.row({"  " + percent(p.share) + ' ' + printable(p.name), swatch(p.srgb, paint), named(p.level, p.tone),
               spread(p.level_spread), lab_text(p.lab)});
  }
}

}  // namespace

void print_today(const std::vector<wire::ZoneToday>& zones, const Paint& paint, std::ostream& out) {
  Table table({"zone", "today", "level and tone", "10–90 %", "L*a*b*"});
  for (const wire::ZoneToday& zone : zones) {
    const wire::ColourView& c = zone.today;
    table.row(
        {printable(zone.zone), swatch(c.srgb, paint), named(c.level, c.tone), spread(c.level_spread), lab_text(c.lab)});
    add_populations(c, paint, table);
  }
  table.print(out);
}

void print_zones(const std::vector<wire::ZoneView>& zones, const Paint& paint, std::ostream& out) {
  Table table({"zone", "bowl", ">on for", "today", "", "wanted", "planned", "", "10–90 %", "white beside", ">condition",
               "lands"});
  for (const wire::ZoneView& z : zones) {
    const std::string wanted =
        z.target ? (z.target->leave ? "leave" : named(z.target->level, z.target->tone, z.target->second_tone)) : "–";
    const bool mixed = z.planned.populations.size() > 1;
    table.row({printable(z.zone), z.bowl.empty() ? "–" : printable(z.bowl),
               z.minutes > 0 ? number(z.minutes, 0) + " min" : "–", swatch(z.today.srgb, paint),
               named(z.today.level, z.today.tone), wanted, swatch(z.planned.srgb, paint),
               named(z.planned.level, z.planned.tone), spread(z.planned.level_spread),
               mixed ? number(z.planned.contrast_levels, 1) + " levels" : "–", percent(z.planned.condition_left),
               landing(z)});
  }
  table.print(out);
  for (const wire::ZoneView& z : zones) {
    if (z.reachable && z.why_not.empty()) continue;
    out << "\n  " << printable(z.zone) << (z.reachable ? ":" : ": not today. Nearest: ")
        << (z.reachable ? "" : named(z.planned.level, z.planned.tone) + ".") << '\n';
    print_lines(z.why_not, "    ", out);
  }
}

void print_doubt(const std::vector<wire::ZoneView>& zones, std::ostream& out) {
  bool said = false;
  for (const wire::ZoneView& z : zones)
    if (!z.doubt.empty()) {
      out << (said ? "" : "\n  Uncertainty\n");
      said = true;
      out << "  " << printable(z.zone) << '\n';
      print_lines(z.doubt, "    ", out);
    }
}

}  // namespace strandline::cli
