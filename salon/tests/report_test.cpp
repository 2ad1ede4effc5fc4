// What stock and visits tell: sums against sums by hand, prices, and how grams follow what was left.
#include "strandline/salon/report.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "strandline/salon/amounts.h"
#include "strandline/salon/prices.h"

namespace strandline::salon {
namespace {

using wire::Moved, wire::StockMove;

struct Book {
  Ledger ledger;
  void keep(Moved what, double g, const char* at, const char* visit = "", const char* bowl = "", const char* by = "",
            std::optional<double> paid = {}) {
    StockMove m;
    m.wish.what = what, m.wish.product = "tint", m.wish.grams = g, m.wish.paid = paid, m.wish.reason = "r";
    m.visit = visit, m.bowl = bowl, m.mix = *visit ? 1 : 0, m.by = by, m.at = std::string(at) + "T10:00:00Z";
    m.id = "m" + std::to_string(ledger.moves().size());
    ledger.take(*ledger.planned(std::move(m)));
  }
};

ReportAsked weeks() {
  ReportAsked asked;
  asked.shelf = "ours", asked.currency = "EUR", asked.from = 20512, asked.until = 20540;  // 2026-02-28 … 2026-03-28
  asked.names["tint"] = "K7 · 7 copper";
  return asked;
}

TEST(Report, AddsUpWhatAHandWouldAddUp) {
  Book b;
  b.keep(Moved::receive, 200, "2026-02-01", "", "", "", 20);  // before the weeks asked for: 0.10 a gram
  b.keep(Moved::receive, 100, "2026-03-02", "", "", "", 16);  // one batch: 0.12 a gram from now on
  b.keep(Moved::use, 40, "2026-03-03", "v1", "A", "ada");
  b.keep(Moved::waste, 10, "2026-03-03", "v1", "A", "ada");
  b.keep(Moved::use, 30, "2026-03-10", "v2", "A", "bo");
  b.keep(Moved::write_off, 20, "2026-03-11");
  b.keep(Moved::use, 5, "2026-04-11", "v3", "A", "bo");  // after them
  const wire::StockReport r = stock_report(b.ledger, {}, weeks());
  EXPECT_EQ(r.from, "2026-02-28");
  EXPECT_EQ(r.use_g, 70);
  EXPECT_EQ(r.waste_g, 10);
  EXPECT_EQ(r.written_off_g, 20);
  EXPECT_EQ(r.received_g, 100);
  EXPECT_EQ(r.paid, 16);
  EXPECT_NEAR(r.cost, 100 * 0.12, 1e-9);
  EXPECT_EQ(r.no_cost_g, 0);
  ASSERT_EQ(r.weeks.size(), 2u);
  EXPECT_EQ(r.weeks[0].week, "2026-03-02");  // a Monday
  EXPECT_EQ(r.weeks[0].waste_g, 10);
  ASSERT_EQ(r.people.size(), 2u);
  EXPECT_EQ(r.people[0].by, "ada");
  EXPECT_NEAR(r.people[0].waste_share, 0.2, 1e-12);
  ASSERT_EQ(r.bowls.size(), 1u);
  EXPECT_EQ(r.bowls[0].visit, "v1");
  ASSERT_EQ(r.prices.size(), 1u);
  EXPECT_NEAR(r.prices[0].per_g, 0.16, 1e-12);
  EXPECT_EQ(r.products[0].name, "K7 · 7 copper");
}

TEST(Report, CostsComeFromTheShelfWhereNobodySaidWhatWasPaid) {
  Book b;
  b.keep(Moved::use, 40, "2026-03-03", "v1", "A");
  EXPECT_EQ(stock_report(b.ledger, {}, weeks()).no_cost_g, 40);
  ReportAsked asked = weeks();
  asked.listed["tint"] = 0.2;
  EXPECT_NEAR(stock_report(b.ledger, {}, asked).cost, 8, 1e-12);
}

TEST(Report, VisitsTellMinutesMisesAndRedoing) {
  Book b;
  EndedVisit one;
  one.id = "v1", one.at = "2026-03-03T12:00:00Z", one.by = "ada", one.person = "c", one.shelf = "ours";
  one.planned_min = 90, one.real_min = 105, one.price_from = 60, one.price_to = 80;
  one.zones = {{"top/all", -1, true}, {"nape/all", 0.5, false}, {"side/all", 2, true}};
  one.ranges = {{"top/all", "tint"}, {"nape/all", "tint"}};
  EndedVisit two = one;
  two.id = "v2", two.redo_of = "v1", two.redo_cause = "tone", two.zones = {};
  EndedVisit other = one;
  other.id = "v3", other.shelf = "another";
  const wire::StockReport r = stock_report(b.ledger, {one, two, other}, weeks());
  ASSERT_EQ(r.visits.size(), 2u);
  EXPECT_EQ(r.visits[0].price, 70);
  EXPECT_EQ(r.visits[1].price, 0);  // a redo costs nothing
  EXPECT_EQ(r.redone, 1);
  ASSERT_EQ(r.causes.size(), 1u);
  EXPECT_EQ(r.causes[0].cause, "tone");
  ASSERT_EQ(r.ranges.size(), 1u);
  EXPECT_EQ(r.ranges[0].zones, 2);  // where no bowl lay nothing was foreseen
  EXPECT_NEAR(r.ranges[0].mean_off, -0.25, 1e-12);
  EXPECT_NEAR(r.ranges[0].mean_abs, 0.75, 1e-12);
  EXPECT_NEAR(r.ranges[0].within_half, 0.5, 1e-12);
}

wire::PriceAsked asked(double minutes, double levels = 0, std::vector<std::string> classes = {}) {
  wire::PriceAsked out;
  out.minutes = minutes, out.levels = levels, out.classes = std::move(classes);
  return out;
}

TEST(Prices, FollowTheRuleOfTheHouse) {
  wire::PriceRules rules;
  rules.by = wire::PriceBy::time, rules.base = 10, rules.per_hour = 60, rules.products_times = 2, rules.round_to = 5;
  rules.spread_share = 0.2;
  wire::PriceAsked costly = asked(90, 1);
  costly.cost = 6.5;
  wire::Price p = price_of(rules, costly);
  EXPECT_EQ(p.from, 115);  // 10 + 90 + 13 = 113
  EXPECT_EQ(p.to, 140);    // 135.6
  rules.by = wire::PriceBy::cls, rules.classes = {{"permanent", 50}, {"lightener", 90}};
  EXPECT_EQ(price_of(rules, asked(30, 0, {"lightener"})).from, 100);
  rules.by = wire::PriceBy::result, rules.per_level = 20;
  EXPECT_EQ(price_of(rules, asked(30, 2)).from, 50);
  // A correction is paid by the time that it takes.
  rules.correction_levels = 3;
  p = price_of(rules, asked(240, 3));
  EXPECT_EQ(p.why, "correction");
  EXPECT_EQ(p.from, 250);
  wire::PriceAsked again = asked(240, 3);
  again.redo = true;
  EXPECT_EQ(price_of(rules, again).to, 0);
  // Whole multiples stay what they are.
  rules = {}, rules.per_hour = 60, rules.round_to = 5;
  EXPECT_EQ(price_of(rules, asked(5)).from, 5);
}

AmountRules rules() {
  AmountRules r;
  r.client_sd = 0.2, r.colourist_sd = 0.1, r.visit_sd = 0.15, r.gate = 2, r.least = 0.6, r.most = 1.6;
  r.waste_share = 0.05;
  return r;
}

EndedVisit weighed(const char* person, const char* by, double planned, double mixed, double left, double factor = 1) {
  EndedVisit v;
  v.person = person, v.by = by, v.id = std::string(person) + by;
  v.planned_g = planned, v.mixed_g = mixed, v.left_g = left, v.mix_factor = factor;
  return v;
}

TEST(Amounts, FollowWhatWasLeftOver) {
  // As much left as a plan mixes on purpose: the usual grams.
  const double usual = 105 - 105 * 0.05 / 1.05;
  EXPECT_NEAR(mix_factor({weighed("c", "", 105, 105, 105 - usual)}, "c", "", rules()).factor, 1, 1e-9);
  const MixFactor once = mix_factor({weighed("c", "", 100, 100, 30)}, "c", "", rules());
  EXPECT_EQ(once.visits, 1);
  EXPECT_LT(once.factor, 0.9);
  EXPECT_GT(once.factor, 0.735);  // one visit is not believed whole
  // Nobody weighed what was left, a slip, another client: nothing is learned.
  EXPECT_EQ(mix_factor({weighed("c", "", 0, 0, 0)}, "c", "", rules()).visits, 0);
  EXPECT_EQ(mix_factor({weighed("c", "", 100, 100, 80)}, "c", "", rules()).visits, 0);
  EXPECT_EQ(mix_factor({weighed("d", "", 100, 100, 30)}, "c", "", rules()).factor, 1);
  // A second bowl was needed: more next time.
  EXPECT_GT(mix_factor({weighed("c", "", 100, 140, 2)}, "c", "", rules()).factor, 1.1);
}

// A colourist who lays on a fifth less, and heads that differ: what is learned comes near both, and the leftovers
// shrink.
TEST(Amounts, LeaveLessOverVisitByVisit) {
  std::mt19937 random(7);
  std::normal_distribution<double> gauss;
  std::vector<EndedVisit> visits;
  double first = 0, last = 0;
  constexpr int clients = 40, rounds = 4;
  std::vector<double> heads;
  for (int c = 0; c < clients; ++c) heads.push_back(std::exp(-0.2 + 0.2 * gauss(random)));
  for (int round = 0; round < rounds; ++round) {
    std::vector<EndedVisit> now;
    for (int c = 0; c < clients; ++c) {
      const std::string id = "c" + std::to_string(c);
      const double factor = mix_factor(visits, id, "ada", rules()).factor, planned = 105 * factor;
      const double takes = 100 * heads[static_cast<std::size_t>(c)] * std::exp(0.1 * gauss(random));
      const double mixed = std::max(planned, takes);
      now.push_back(weighed(id.c_str(), "ada", planned, mixed, mixed - takes, factor));
      (round == 0 ? first : last) += round == 0 || round == rounds - 1 ? std::abs(planned - 1.05 * takes) : 0;
    }
    visits.insert(visits.end(), now.begin(), now.end());
  }
  EXPECT_LT(last, 0.6 * first);
  // Somebody new to this colourist starts from the colourist's own hand.
  EXPECT_NEAR(mix_factor(visits, "new", "ada", rules()).factor, std::exp(-0.2), 0.08);
  EXPECT_EQ(mix_factor(visits, "new", "bo", rules()).factor, 1);
}

}  // namespace
}  // namespace strandline::salon
