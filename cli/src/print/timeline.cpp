#include "src/print/timeline.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <ostream>
#include <vector>

#include "en/sentences.h"
#include "src/print/table.h"
#include "src/print/text.h"
#include "strandline/wire/schedule_fields.h"

namespace strandline::cli {

namespace {

constexpr int kColumns = 72;

// One row of characters; a cell is a stretch of minutes.
class Lane {
 public:
  explicit Lane(double minutes_per_cell) : step_(minutes_per_cell), cells_(kColumns, " ") {}

  void fill(double from, double until, const std::string& mark) {
    const int first = cell(from), last = std::max(first, cell(until) - 1);
    for (int i = first; i <= last; ++i) cells_[i] = mark;
  }
  void put(double at, const std::string& mark) { cells_[cell(at)] = mark; }
  std::string text() const {
    std::string out;
    for (const std::string& c : cells_) out += c;
    return out;
  }

 private:
  int cell(double minute) const { return std::clamp(static_cast<int>(std::floor(minute / step_)), 0, kColumns - 1); }

  double step_;
  std::vector<std::string> cells_;
};

double minutes_per_cell(const Timeline& t) { return std::max(1.0, t.finish_min / kColumns); }

// 0:00 … at a round distance of about ten cells.
std::string ruler(const Timeline& t, double step) {
  const double apart = std::max(5.0, std::ceil(step * 10 / 5) * 5);
  std::string out;
  for (double at = 0; at <= t.finish_min; at += apart) {
    const auto column = static_cast<std::size_t>(at / step);
    if (column >= kColumns) break;
    out = padded(out, column) + minutes(at) + ' ';
  }
  return out;
}

char letter(TaskKind kind) {
  switch (kind) {
    case TaskKind::prepare:
      return 'p';
    case TaskKind::mix:
      return 'm';
    case TaskKind::apply:
      return 'A';
    case TaskKind::check:
      return 'c';
    case TaskKind::remove_packet:
      return 'k';
    case TaskKind::emulsify:
      return 'e';
    case TaskKind::rinse:
      return 'r';
    case TaskKind::shampoo:
      return 's';
    case TaskKind::tone:
      return 't';
    case TaskKind::treat:
      return 'a';
    case TaskKind::dry:
      return 'd';
    case TaskKind::photograph:
      return 'f';
  }
  return '?';
}

void draw(const Timeline& t, std::ostream& out) {
  const double step = minutes_per_cell(t);
  std::map<std::string, Lane> hands;
  std::size_t name_width = 10;
  for (const TimelineTask& task : t.tasks) {
    if (task.who.empty()) continue;
    hands.try_emplace(task.who, step)
        .first->second.fill(task.start_min, task.end_min, std::string(1, letter(task.kind)));
    name_width = std::max(name_width, width(task.who));
  }
  for (const Development& d : t.developments) name_width = std::max(name_width, width(d.bowl + " " + d.zone));
  const std::string margin = "  " + std::string(name_width, ' ') + "  ";
  out << margin << ruler(t, step) << '\n';
  for (const auto& [who, lane] : hands)
    out << "  " << padded(printable(who), name_width) << " │" << lane.text() << '\n';
  for (const Development& d : t.developments) {
    Lane lane(step);
    lane.fill(d.first_touch, d.last_touch, "▒");
    lane.fill(d.last_touch, d.min_until, "░");
    lane.fill(d.min_until, std::min(d.leaves_at, d.max_until), "▓");
    lane.put(d.leaves_at, "|");
    out << "  " << padded(printable(d.bowl + " " + d.zone), name_width) << " │" << lane.text() << '\n';
  }
  out << margin << "▒ going on  ░ before its shortest time  ▓ within its two clocks  | comes off\n";
}

// Of an order by need: the minutes that decided.
std::map<std::string, std::string> needs(const TimelineTask& task) {
  if (task.needs_min <= 0) return {};
  return {{"minutes", number(task.needs_min, 0)}};
}

}  // namespace

void print_timeline(const Timeline& t, std::ostream& out) {
  if (t.tasks.empty()) return;  // nothing to do, or a clock that breaks: the notes say which
  out << '\n';
  draw(t, out);
  out << '\n';
  Table table({">from", ">to", "who", "what", "where", "why"});
  for (const TimelineTask& task : t.tasks) {
    const std::string what =
        std::string(en::label(wire::word_of(task.kind))) + (task.bowl.empty() ? "" : " " + task.bowl);
    table.row({minutes(task.start_min), minutes(task.end_min), printable(task.who), printable(what),
               printable(task.zone), task.reason.empty() ? "" : printable(en::say({task.reason, "", needs(task)}))});
  }
  table.print(out);
  for (const TimelineStep& s : t.steps)
    if (t.steps.size() > 1 && s.step != t.steps.back().step)
      out << "\n  Step " << s.step << ": at the basin " << minutes(s.basin_min) << ", the next begins "
          << minutes(s.until_min) << '.';
  out << "\n  At the basin " << minutes(t.basin_min) << ", finished " << minutes(t.finish_min) << " (typically "
      << minutes(t.finish_mean) << " ± " << number(t.finish_sd, 0) << " min).";
  if (!t.proven) out << " Not every order was compared: an earlier finish may exist.";
  out << '\n';
}

}  // namespace strandline::cli
