// The ledger by itself: what goes leaves the batch that is due first, and no gram comes or goes unsaid.
#include "strandline/salon/ledger.h"

#include <gtest/gtest.h>

#include <random>

namespace strandline::salon {
namespace {

using wire::Moved, wire::StockMove;

StockMove said(Moved what, double g, const std::string& batch = "", const std::string& expires = "") {
  static int made = 0;
  StockMove m;
  m.wish.what = what, m.wish.product = "tint", m.wish.grams = g, m.wish.batch = batch, m.wish.expires = expires;
  m.id = "move-" + std::to_string(++made), m.at = "2026-03-10T10:00:00Z";
  return m;
}

struct Book {
  Ledger ledger;
  Result<StockMove> keep(StockMove move) {
    if (move.wish.what == Moved::count && !move.wish.seen) move.wish.seen = ledger.of(move.wish.product).seen;
    auto planned = ledger.planned(std::move(move));
    if (planned) ledger.take(*planned);
    return planned;
  }
  StockMove used(double g, const std::string& visit, const char* bowl = "A") {
    StockMove m = said(Moved::use, g);
    m.visit = visit, m.bowl = bowl, m.mix = 1;
    return *keep(m);
  }
  double left() const { return grams(ledger.of("tint").mg()); }
  double of(const std::string& batch) const {
    for (const Lot& lot : ledger.of("tint").lots)
      if (lot.batch == batch) return grams(lot.mg);
    return -1;
  }
};

TEST(Ledger, WhatIsDueFirstGoesFirst) {
  Book b;
  ASSERT_TRUE(b.keep(said(Moved::receive, 60, "late", "2027-05-01")));
  ASSERT_TRUE(b.keep(said(Moved::receive, 60, "unknown")));
  ASSERT_TRUE(b.keep(said(Moved::receive, 60, "early", "2026-05-01")));
  const StockMove used = b.used(70, "v");
  ASSERT_EQ(used.lots.size(), 2u);
  EXPECT_EQ(b.of("early"), 0);
  EXPECT_EQ(b.of("late"), 50);
  EXPECT_EQ(b.of("unknown"), 60);
  // A batch by its name.
  ASSERT_TRUE(b.keep(said(Moved::waste, 5, "unknown")));
  EXPECT_EQ(b.of("unknown"), 55);
}

TEST(Ledger, MoreThanIsThereIsTold) {
  Book b;
  EXPECT_EQ(b.keep(said(Moved::waste, 5)).error()[0].code, "not_counted");
  // Nobody knows how much is there: mixed all the same, and nothing is claimed.
  EXPECT_TRUE(b.used(30, "v").lots.empty());
  EXPECT_FALSE(b.ledger.of("tint").counted());
  ASSERT_TRUE(b.keep(said(Moved::receive, 20)));
  const auto thrown = b.keep(said(Moved::waste, 25));
  EXPECT_EQ(thrown.error()[0].code, "more_than_there");
  EXPECT_EQ(thrown.error()[0].params.at("grams"), "20.0");
  const StockMove used = b.used(50, "w");
  EXPECT_EQ(used.short_g, 30);
  EXPECT_EQ(b.left(), 0);
  EXPECT_EQ(b.ledger.of("tint").short_mg, 30000);
  // A count settles it.
  ASSERT_TRUE(b.keep(said(Moved::count, 12)));
  EXPECT_EQ(b.left(), 12);
  EXPECT_EQ(b.ledger.of("tint").short_mg, 0);
}

TEST(Ledger, TwoWhoCountAtOnceAreTold) {
  Book b;
  ASSERT_TRUE(b.keep(said(Moved::receive, 100)));
  const long long seen = b.ledger.of("tint").seen;
  StockMove mine = said(Moved::count, 80), theirs = said(Moved::count, 82);
  mine.wish.seen = theirs.wish.seen = seen;
  ASSERT_TRUE(b.keep(mine));
  const auto late = b.keep(theirs);
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error()[0].code, "moved_meanwhile");
  EXPECT_EQ(late.error()[0].params.at("grams"), "80.0");
  theirs.wish.seen = std::stoll(late.error()[0].params.at("seen"));
  ASSERT_TRUE(b.keep(theirs));
  EXPECT_EQ(b.left(), 82);
  StockMove blind = said(Moved::count, 1);
  EXPECT_EQ(b.ledger.planned(blind).error()[0].code, "count_unseen");
}

TEST(Ledger, AnUndoIsACounterMovement) {
  Book b;
  const StockMove receipt = *b.keep(said(Moved::receive, 60, "b1"));
  const auto undo = [&](const std::string& id) {
    StockMove m = said(Moved::undo, 0);
    m.wish.undoes = id;
    return b.keep(m);
  };
  const StockMove waste = *b.keep(said(Moved::waste, 10));
  ASSERT_TRUE(undo(waste.id));
  EXPECT_EQ(b.left(), 60);
  EXPECT_EQ(undo(waste.id).error()[0].code, "undone_already");
  EXPECT_EQ(undo("no-such").error()[0].code, "movement_not_found");
  // What came was partly used: it is short then, not less than nothing.
  const StockMove used = b.used(25, "v");
  EXPECT_EQ(undo(used.id).error()[0].code, "booked_by_visit");
  ASSERT_TRUE(undo(receipt.id));
  EXPECT_EQ(b.left(), 0);
  EXPECT_EQ(b.ledger.of("tint").short_mg, 25000);
  EXPECT_FALSE(b.ledger.of("tint").counted());  // nobody vouches for it any more
  // What was counted since holds.
  const StockMove again = *b.keep(said(Moved::receive, 60, "b1"));
  ASSERT_TRUE(b.keep(said(Moved::count, 58)));
  EXPECT_EQ(undo(again.id).error()[0].code, "counted_since");
}

TEST(Ledger, ABowlThatGotLessGivesBackToItsBatches) {
  Book b;
  ASSERT_TRUE(b.keep(said(Moved::receive, 10, "early", "2026-05-01")));
  ASSERT_TRUE(b.keep(said(Moved::receive, 60, "late", "2027-05-01")));
  b.used(30, "v");
  EXPECT_EQ(b.of("late"), 40);
  b.used(-30, "v");
  EXPECT_EQ(b.of("early"), 10);
  EXPECT_EQ(b.of("late"), 60);
  // A count has spoken since: the movement is told, the shelf stays as it was counted.
  b.used(30, "v");
  ASSERT_TRUE(b.keep(said(Moved::count, 35)));
  b.used(-5, "v");
  EXPECT_EQ(b.left(), 35);
  EXPECT_EQ(b.ledger.booked("v").begin()->second.use, 25000);
}

TEST(Ledger, CostsAreTheMeanOfWhatWasPaid) {
  Book b;
  StockMove receipt = said(Moved::receive, 60, "b1");
  receipt.wish.paid = 6;
  ASSERT_TRUE(b.keep(receipt));
  receipt = said(Moved::receive, 60, "b1");
  receipt.wish.paid = 12;
  ASSERT_TRUE(b.keep(receipt));
  b.used(10, "v");
  EXPECT_NEAR(*b.ledger.moves().back().cost, 1.5, 1e-9);
}

// Whatever is said in whatever order: every batch and every short sum is what the movements add up to, nothing is less
// than nothing, a refused wish leaves no trace, and read again the ledger is the same.
TEST(Ledger, NothingIsLostOrNegativeUnsaid) {
  constexpr int runs = 150, steps = 60;
  for (unsigned seed = 0; seed < runs; ++seed) {
    std::mt19937 random(seed);
    const auto pick = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    Book b;
    for (int i = 0; i < steps; ++i) {
      const char* batches[] = {"", "b1", "b2"};
      const char* dates[] = {"", "2026-05-01", "2027-01-01"};
      StockMove m = said(static_cast<Moved>(pick(6)), pick(4000) / 17.0, batches[pick(3)], dates[pick(3)]);
      if (m.wish.what == Moved::use || (m.wish.what == Moved::waste && pick(2))) {
        m.visit = "v" + std::to_string(pick(3)), m.bowl = "A", m.mix = 1;
        m.wish.batch = m.wish.expires = "";
        const auto booked = b.ledger.booked(m.visit);
        const Milligrams there = booked.empty()                ? 0
                                 : m.wish.what == Moved::waste ? booked.begin()->second.waste
                                                               : booked.begin()->second.use;
        if (pick(3) == 0 && there > 0) m.wish.grams = -grams(std::min(there, milligrams(m.wish.grams)));
      }
      if (m.wish.what == Moved::undo && !b.ledger.moves().empty())
        m.wish.undoes = b.ledger.moves()[static_cast<std::size_t>(pick(static_cast<int>(b.ledger.moves().size())))].id;
      if (m.wish.what == Moved::count && pick(2)) m.wish.batch = m.wish.expires = "";
      if (pick(5) == 0) {  // planned, taken, and not kept after all
        const auto mark = b.ledger.mark({"tint"});
        const Milligrams before = b.ledger.of("tint").mg();
        (void)b.keep(m);
        b.ledger.back_to(mark);
        ASSERT_EQ(b.ledger.of("tint").mg(), before);
      } else {
        (void)b.keep(m);
      }
      Milligrams sum = 0, missing = 0;
      std::map<std::pair<std::string, std::string>, Milligrams> lots;
      for (const StockMove& kept : b.ledger.moves()) {
        Milligrams moved = 0;
        for (const wire::StockLot& lot : kept.lots)
          moved += milligrams(lot.grams), lots[{lot.batch, lot.expires}] += milligrams(lot.grams);
        sum += moved, missing += milligrams(kept.short_g);
        // What was said to go has gone, from a batch or as short, wherever somebody knew how much was there.
        if (kept.wish.what == Moved::use && kept.wish.grams > 0 && (!kept.lots.empty() || kept.short_g > 0))
          ASSERT_EQ(milligrams(kept.wish.grams), milligrams(kept.short_g) - moved) << "seed " << seed;
        if (kept.wish.what == Moved::receive) ASSERT_EQ(moved, milligrams(kept.wish.grams));
      }
      const Balance& balance = b.ledger.of("tint");
      ASSERT_EQ(balance.mg(), sum) << "seed " << seed << " step " << i;
      ASSERT_EQ(balance.short_mg, missing) << "seed " << seed << " step " << i;
      ASSERT_GE(missing, 0);
      for (const Lot& lot : balance.lots) {
        ASSERT_GE(lot.mg, 0) << "seed " << seed << " step " << i;
        ASSERT_EQ(lot.mg, (lots[{lot.batch, lot.expires}]));
      }
    }
    Ledger again;
    for (const StockMove& kept : b.ledger.moves()) {
      auto read = wire::read_stock_body(wire::stock_body(kept));
      ASSERT_TRUE(read) << read.error()[0].code << ' ' << read.error()[0].path;
      read->id = kept.id, read->at = kept.at;
      again.take(*read);
    }
    ASSERT_EQ(again.of("tint").mg(), b.ledger.of("tint").mg());
    ASSERT_EQ(again.of("tint").short_mg, b.ledger.of("tint").short_mg);
    ASSERT_EQ(again.of("tint").counted(), b.ledger.of("tint").counted());
  }
}

}  // namespace
}  // namespace strandline::salon
