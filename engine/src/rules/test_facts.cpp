#include "rules/place.h"

namespace strandline {
namespace {

constexpr double kHoursADay = 24, kDaysAMonth = 30.44;

bool done(const Place& p) { return !p.visit.skin_test.empty(); }
std::optional<double> days(const Place& p) { return days_between(p.visit.skin_test, p.visit.date); }

// Between the day it was put on and the day of the reading, or today where it was not read. Days are all that is
// written, so a test of the day before yesterday counts as two whole days. A day after the visit is none.
std::optional<double> hours(const Place& p) {
  if (!done(p)) return std::nullopt;
  const double now = days(p).value_or(0);
  const double read = p.visit.test.read.empty() ? now : days_between(p.visit.skin_test, p.visit.test.read).value_or(0);
  return kHoursADay * (read < now ? read : now);
}

constexpr FactRow kFacts[] = {
    {"test_asked", [](const Place& p) -> std::optional<double> { return p.visit.policy.rules.skin_test_asked; }},
    {"test_missing", [](const Place& p) -> std::optional<double> { return !done(p); }},
    {"test_hours", [](const Place& p) { return hours(p); }},
    {"test_unread",
     [](const Place& p) -> std::optional<double> { return done(p) && p.visit.test.result == TestResult::unknown; }},
    {"test_positive", [](const Place& p) -> std::optional<double> { return p.visit.test.result > TestResult::clear; }},
    {"test_clear",
     [](const Place& p) -> std::optional<double> { return done(p) && p.visit.test.result == TestResult::clear; }},
    {"test_months",
     [](const Place& p) -> std::optional<double> {
       if (!done(p)) return std::nullopt;
       return days(p).value_or(0) / kDaysAMonth;
     }},
    {"test_voided", [](const Place& p) -> std::optional<double> { return done(p) && p.visit.test.voided; }},
    // A test that does not say whose colour it was is a test of none.
    {"other_maker_tested",
     [](const Place& p) -> std::optional<double> { return done(p) && p.visit.test.maker != p.range.maker; }},
};

}  // namespace

std::span<const FactRow> test_facts() { return kFacts; }

}  // namespace strandline
