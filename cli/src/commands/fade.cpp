#include <memory>
#include <ostream>

#include "src/print/swatch.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "src/visit_command.h"

namespace strandline::cli {

namespace {

void print_fading(const wire::FadeAnswer& answer, const Paint& paint, std::ostream& out) {
  out << "  " << number(answer.washes_per_week) << " washes a week, " << number(answer.light_hours_per_week)
      << " h of full daylight a week.\n";
  for (const wire::FadeZoneView& zone : answer.zones) {
    out << "\n  " << printable(zone.zone) << '\n';
    Table table({">week", ">washes", "", "level and tone", "10–90 %", "L*a*b*", ">ΔE00"});
    for (const wire::FadeMomentView& m : zone.moments)
      table.row({number(m.week), number(m.washes), swatch(m.srgb, paint), named(m.level, m.tone),
                 number(m.level_spread.p10) + "–" + number(m.level_spread.p90), lab_text(m.lab),
                 number(m.delta_e_2000)});
    table.print(out);
    out << "  "
        << (zone.visible_week ? "Visibly off from week " + number(*zone.visible_week) + " on."
                              : "Not visibly off within these weeks.")
        << '\n';
  }
  out << "\n  Regrowth is left out here: see `strandline grow`. How fast colour fades differs widely from head to "
         "head.\n";
}

}  // namespace

void add_fade(CLI::App& app, Session& session) {
  const auto habit = std::make_shared<Habit>();
  CLI::App* command = add_visit_command(
      app, session, "fade", "the tone over weeks of a washing habit, after the document's own bowls",
      [habit](const VisitFlags& flags, Session& s) {
        return run_visit(
            flags, s, [&](const auto& asked, const auto&) { return salon::fade(asked, *habit); },
            [&](const wire::FadeAnswer& a, const Visit&) { print_fading(a, paint_for(flags, s.io), s.io.out); });
      });
  command->add_option("--washes", habit->washes_per_week, "washes a week, 0 to 21 (default 3)");
  command->add_option("--sun", habit->light_hours_per_week, "hours of full daylight a week, 0 to 100 (default 3)");
  command->add_option("--weeks", habit->weeks, "weeks to look ahead, 1 to 52 (default 8)");
}

}  // namespace strandline::cli
