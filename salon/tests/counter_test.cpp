#include "strandline/salon/counter.h"

#include "line.h"

namespace strandline::salon {
namespace {

using std::chrono::milliseconds;
using std::chrono::seconds;

constexpr seconds kLong{20};

// The first word that is another than that of `after`.
Weighed newer(const Counter& counter, std::int64_t& after) {
  const Weighed now = counter.next(after, kLong);
  EXPECT_NE(now.seq, after) << "nothing came";
  after = now.seq;
  return now;
}

TEST(Counter, TellsEachChangeOfTheScaleOnce) {
  Line line;
  const Counter counter({line.name, ScaleForm::sent, 9600});
  std::int64_t after = 0;
  line.say("     12.5 g ?\r\n");
  EXPECT_EQ(newer(counter, after).reading, (ScaleReading{12.5, ScaleState::moving}));
  line.say("     12.5 g\r\n");
  EXPECT_EQ(newer(counter, after).reading, (ScaleReading{12.5, ScaleState::stable}));
  line.say("     12.5 g\r\n");
  EXPECT_EQ(counter.next(after, milliseconds(200)).seq, after) << "the same again is no news";
  EXPECT_EQ(counter.next(after - 1, kLong).seq, after) << "who comes late gets the newest";
}

TEST(Counter, AsksAScaleThatWaitsForIt) {
  Line line;
  const Counter counter({line.name, ScaleForm::asked, 9600});
  std::int64_t after = 0;
  EXPECT_EQ(line.hear(kAskWeight.size()), kAskWeight);
  line.say("SI          8.5 g  \r\n");
  EXPECT_EQ(newer(counter, after).reading, (ScaleReading{8.5, ScaleState::stable}));
}

TEST(Counter, SaysThatAScaleIsSilentAndHearsItAgain) {
  Line line;
  const Counter counter({line.name, ScaleForm::sent, 9600}, milliseconds(60));
  std::int64_t after = 0;
  EXPECT_EQ(newer(counter, after).why.front().code, "scale_silent");
  line.say("      3.0 g\r\n");
  const Weighed back = newer(counter, after);
  EXPECT_TRUE(back.why.empty());
  EXPECT_EQ(back.reading.grams, 3);
}

TEST(Counter, TakesAScaleUpAgainThatWasPulledOut) {
  const std::string path = "/tmp/strandline-counter-" + std::to_string(getpid());
  Line first;
  ASSERT_EQ(symlink(first.name.c_str(), path.c_str()), 0);
  const Counter counter({path, ScaleForm::sent, 9600}, kLong, milliseconds(20));
  std::int64_t after = 0;
  first.say("      1.0 g\r\n");
  EXPECT_EQ(newer(counter, after).reading.grams, 1);
  unlink(path.c_str());
  first.hang_up();
  std::string code;
  while (code != "cannot_read") {
    code = newer(counter, after).why.at(0).code;
    ASSERT_TRUE(code == "scale_gone" || code == "cannot_read") << code;
  }
  Line second;
  ASSERT_EQ(symlink(second.name.c_str(), path.c_str()), 0);
  second.say("      2.0 g\r\n");
  EXPECT_EQ(newer(counter, after).reading.grams, 2);
  unlink(path.c_str());
}

TEST(Counter, EndsWhileItsScaleIsSilent) {
  Line line;
  const auto start = std::chrono::steady_clock::now();
  {
    const Counter counter({line.name, ScaleForm::sent, 9600});
  }
  EXPECT_LT(std::chrono::steady_clock::now() - start, kLong);
}

}  // namespace
}  // namespace strandline::salon
