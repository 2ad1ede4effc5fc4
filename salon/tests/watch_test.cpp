// The whole salon file is read at once and again; what is wrong in it is told once.
#include "strandline/salon/watch.h"

#include <gtest/gtest.h>

#include <atomic>

namespace strandline::salon {
namespace {

class Journal : public store::Store {
 public:
  store::Expected<std::vector<store::Fact>> hand_in(const std::vector<store::NewFact>&, const std::string&,
                                                    std::int64_t) override {
    return {};
  }
  store::Expected<std::vector<store::Fact>> facts(const store::FactsAsked&) override { return {}; }
  store::Expected<store::Save> save(const store::NewDraft&) override { return store::Save{}; }
  store::Expected<void> erase(const std::string&) override { return {}; }
  store::Expected<std::optional<store::VisitRow>> visit(const std::string&) override { return std::nullopt; }
  store::Expected<std::vector<store::VisitRow>> visits(const store::VisitsAsked&) override { return {}; }
  store::Expected<std::vector<store::Save>> changes(std::int64_t, int) override { return {}; }
  store::Expected<std::optional<std::int64_t>> verify(const std::stop_token& stop) override {
    ++readings;
    while (endless && !stop.stop_requested()) std::this_thread::yield();
    if (hungry) throw std::bad_alloc();
    if (unreadable) return tl::unexpected(store::Trouble{"store_unavailable", "disk", 0});
    return broken > 0 ? std::optional<std::int64_t>(broken) : std::nullopt;
  }
  std::atomic<int> readings = 0, broken = 0;
  std::atomic<bool> endless = false, unreadable = false, hungry = false;
};

class Watching : public testing::Test {
 protected:
  void start(std::chrono::milliseconds every) {
    watch_ = std::make_unique<Watch>(journal_, [this](const Problems& found) { told_ += found.front().code; }, every);
  }
  void wait_for_readings(int more) const {
    for (const int until = journal_->readings + more; journal_->readings < until;)
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  std::shared_ptr<Journal> journal_ = std::make_shared<Journal>();
  std::string told_;  // read once the thread has ended
  std::unique_ptr<Watch> watch_;
};

TEST_F(Watching, ReadsAtOnceAndAgainAndTellsOnce) {
  start(std::chrono::milliseconds(1));
  wait_for_readings(2);
  EXPECT_TRUE(watch_->found().empty());
  journal_->broken = 3;
  wait_for_readings(4);
  EXPECT_EQ(watch_->found(), (Problems{{"entry_broken", "", {{"seq", "3"}}}}));
  journal_->broken = 0;
  wait_for_readings(2);
  EXPECT_TRUE(watch_->found().empty()) << "a copy was put back";
  watch_.reset();
  EXPECT_EQ(told_, "entry_broken");
}

TEST_F(Watching, WaitsADayUnlessToldOtherwise) {
  watch_ = std::make_unique<Watch>(journal_, nullptr);
  while (journal_->readings == 0) std::this_thread::yield();
  std::this_thread::sleep_for(std::chrono::milliseconds(30));
  EXPECT_EQ(journal_->readings, 1);
}

TEST_F(Watching, BreaksOffAReadingAtTheEnd) {
  journal_->endless = true;
  start(std::chrono::hours(24));
  while (journal_->readings == 0) std::this_thread::yield();
  watch_.reset();
  EXPECT_EQ(journal_->readings, 1);
  EXPECT_TRUE(told_.empty());
}

TEST_F(Watching, TellsADiskThatCannotBeReadButDoesNotHoldItAgainstTheFile) {
  journal_->unreadable = true;
  start(std::chrono::hours(24));
  while (journal_->readings == 0) std::this_thread::yield();
  std::this_thread::sleep_for(std::chrono::milliseconds(30));
  EXPECT_TRUE(watch_->found().empty());
  watch_.reset();
  EXPECT_EQ(told_, "store_unavailable");
}

TEST_F(Watching, OutlivesWantOfMemory) {
  journal_->hungry = true;
  start(std::chrono::milliseconds(1));
  wait_for_readings(2);
  EXPECT_TRUE(watch_->found().empty());
  journal_->hungry = false;
  journal_->broken = 1;
  wait_for_readings(2);
  EXPECT_EQ(watch_->found().front().code, "entry_broken");
}

}  // namespace
}  // namespace strandline::salon
