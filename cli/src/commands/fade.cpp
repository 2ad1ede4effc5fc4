#include <memory>
#include <optional>
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
  struct Asked {
    std::optional<double> washes, sun;
    std::optional<int> weeks;
  };
  const auto given = std::make_shared<Asked>();
  const auto habit = [given](Habit written) {
    written.washes_per_week = given->washes.value_or(written.washes_per_week);
    written.light_hours_per_week = given->sun.value_or(written.light_hours_per_week);
    written.weeks = given->weeks.value_or(written.weeks);
    return written;
  };
  CLI::App* command = add_visit_command(
      app, session, "fade", "the tone over weeks of a washing habit, after the document's own bowls",
      [habit](const VisitFlags& flags, Session& s) {
        return run_visit(
            flags, s,
            [&](const auto& asked, const auto& effort) {
              return salon::fade(asked, habit(asked.options.habit), effort);
            },
            [&](const wire::FadeAnswer& a, const Visit&) { print_fading(a, paint_for(flags, s.io), s.io.out); });
      });
  command->add_option("--washes", given->washes, "washes a week, 0 to 21 (default: the document's habit, else 3)");
  command->add_option("--sun", given->sun, "hours of full daylight a week, 0 to 100 (likewise, 3)");
  command->add_option("--weeks", given->weeks, "weeks to look ahead, 1 to 52 (likewise, 8)");
}

}  // namespace strandline::cli
