#include "rules/place.h"

#include <charconv>
#include <chrono>
#include <cstdio>

#include "generated/constants.h"

namespace strandline {
namespace {

std::optional<std::chrono::sys_days> civil(std::string_view date) {
  constexpr size_t kLength = 10;  // YYYY-MM-DD
  int y = 0;
  unsigned m = 0, d = 0;
  if (date.size() != kLength) return std::nullopt;
  const auto read = [&](size_t at, size_t n, auto& out) {
    const auto [end, error] = std::from_chars(date.data() + at, date.data() + at + n, out);
    return error == std::errc() && end == date.data() + at + n;
  };
  if (!read(0, 4, y) || !read(5, 2, m) || !read(8, 2, d)) return std::nullopt;
  const std::chrono::year_month_day day{std::chrono::year(y), std::chrono::month(m), std::chrono::day(d)};
  if (!day.ok()) return std::nullopt;
  return std::chrono::sys_days(day);
}

}  // namespace

bool touches_skin(const Area& area, const Span& span) { return touches_scalp(span) && !area.woven; }

std::string_view class_in_rules(const Range& range, const Area& area, const Span& span) {
  switch (range.cls) {
    case ProductClass::permanent:
      return "permanent";
    case ProductClass::high_lift:
      return "high_lift";
    case ProductClass::demi:
      return range.alkaline_lift < Constants{}.acid_demi_lift_below ? "demi_acid" : "demi_alkaline";
    case ProductClass::direct:
      return "direct";
    case ProductClass::clear:
      return "clear";
    case ProductClass::filler:
      return "filler";
    case ProductClass::remover:
      return "remover";
    case ProductClass::pre_treatment:
      return range.developer_percents.empty() ? "chelating" : "pre_softening";
    case ProductClass::lightener:
      return touches_skin(area, span) ? "lightener_on_scalp" : "lightener_off_scalp";
    default:
      return "";
  }
}

std::optional<double> days_between(std::string_view from, std::string_view to) {
  const auto a = civil(from), b = civil(to);
  if (!a || !b) return std::nullopt;
  return static_cast<double>((*b - *a).count());
}

std::string months_after(std::string_view date, double months) {
  using namespace std::chrono;
  const auto from = civil(date);
  if (!from) return {};
  year_month_day day = year_month_day(*from) + std::chrono::months(static_cast<int>(months));
  if (!day.ok()) day = day.year() / day.month() / last;
  char text[16];
  std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                static_cast<unsigned>(day.day()));
  return text;
}

FactValue find_fact(std::string_view name) {
  for (const auto& facts : {person_facts(), test_facts(), history_facts(), hair_facts(), bowl_facts()})
    for (const FactRow& row : facts)
      if (row.name == name) return row.value;
  return nullptr;
}

}  // namespace strandline
