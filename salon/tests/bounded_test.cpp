// Every verb ends with whoever waits for it, and in its time.
#include <gtest/gtest.h>

#include <chrono>
#include <ctime>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"

namespace strandline::salon {
namespace {

using Clock = std::chrono::steady_clock;

const std::filesystem::path root(STRANDLINE_SOURCE_DIR);

const House& house() {
  static const Result<House> h = open_house({.shelf = {}, .policy = {}, .knowledge = root / "knowledge"});
  return *h;
}

wire::Json document(const std::string& name) {
  return *wire::parse(*read_file((root / "knowledge/demo/visits" / (name + ".json")).string(), std::size_t{1} << 20));
}

// Twelve areas of four spans with four kinds of hair each: what must still be planned.
wire::Json large() {
  wire::Json areas = wire::Json::array();
  for (int a = 0; a < 12; ++a) {
    wire::Json spans = wire::Json::array();
    for (int s = 0; s < 4; ++s) {
      wire::Json kinds = wire::Json::array();
      for (int k = 0; k < 4; ++k)
        kinds.push_back(
            {{"name", "k" + std::to_string(k)}, {"share", 0.25}, {"level", 1 + (a + s + k) % 9}, {"tone", "natural"}});
      spans.push_back(
          {{"id", "s" + std::to_string(s)}, {"from_cm", 2 * s}, {"to_cm", 2 * s + 2}, {"populations", kinds}});
    }
    areas.push_back({{"id", "a" + std::to_string(a)}, {"kind", "crown"}, {"scalp_cm2", 10}, {"spans", spans}});
  }
  wire::Json out = document("my_own_bowls");
  out["head"]["areas"] = areas;
  wire::Json zones = wire::Json::array(), aims = wire::Json::array();
  for (int a = 0; a < 12; ++a)
    for (int s = 0; s < 4; ++s) {
      zones.push_back("a" + std::to_string(a) + "/s" + std::to_string(s));
      aims.push_back({{"zone", zones.back()}, {"level", 1 + (a + s) % 9}, {"tone", "natural"}});
    }
  out["bowls"] = wire::Json::array({out["bowls"][0]});
  out["bowls"][0]["zones"] = zones;
  out["aims"] = aims;
  return out;
}

const Beside kBeside{"demi", "permanent-6-natural"};  // for convert and substitute

double seconds_since(Clock::time_point begin) { return std::chrono::duration<double>(Clock::now() - begin).count(); }

// Of this thread's own work: others on the machine do not count.
double worked() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

#ifdef STRANDLINE_SANITIZED
constexpr double kSlower = 12;
#else
constexpr double kSlower = 1;
#endif

TEST(Bounded, EveryHeavyVerbIsGivenUpWithItsClient) {
  for (const std::string verb : {"predict", "formulate", "schedule", "plan", "reach", "fade", "grow", "what-if",
                                 "review", "convert", "substitute"}) {
    const auto got = answer(verb, large(), house().sources(), {serial_for, [] { return true; }});
    ASSERT_FALSE(got) << verb;
    EXPECT_EQ(got.error()[0].code, "given_up") << verb << ' ' << got.error()[0].path;
  }
}

// Whoever waits no longer is noticed soon: no verb works for long without looking up, and it ends where it looks.
TEST(Bounded, NoVerbWorksLongWithoutLookingUp) {
  constexpr double kLongest = 0.5, kEnough = 4;  // seconds of work
  for (const std::string verb : {"predict", "formulate", "schedule", "plan", "reach", "fade", "grow", "what-if",
                                 "review", "convert", "substitute"}) {
    wire::Json asked = large();
    if (verb == "schedule") asked.erase("bowls");
    asked["options"]["seconds"] = kEnough / 2;  // so that what follows a stopped search is looked at too
    const double begin = worked();
    double last = begin, longest = 0;
    const auto look = [&] {
      const double now = worked();
      longest = std::max(longest, now - last);
      last = now;
      return now - begin > kEnough;
    };
    const auto got = answer(verb, asked, house().sources(), {serial_for, look}, kBeside);
    longest = std::max(longest, worked() - last);
    EXPECT_LT(longest, kSlower * kLongest) << verb;
    if (!got) {
      EXPECT_TRUE(got.error()[0].code == "given_up" || got.error()[0].code == "out_of_time")
          << verb << ' ' << got.error()[0].code;
    }
  }
}

// What comes after the seconds is short: the best so far is told, or that there is none.
TEST(Bounded, ASearchEndsCloseToItsSeconds) {
  for (wire::Json asked : {large(), document("salt_and_pepper_two_tones"), document("packets_and_regrowth")}) {
    asked["options"]["seconds"] = 0.25;
    const auto begin = Clock::now();
    const auto got = answer("plan", asked, house().sources(), {});
    EXPECT_LT(seconds_since(begin), 3.5 * kSlower);
    if (!got) {
      EXPECT_EQ(got.error()[0].code, "out_of_time");
      EXPECT_EQ(got.error()[0].params.at("seconds"), "0.25");
    } else {
      EXPECT_EQ((*got)["report"]["stopped"], "cancelled");
    }
  }
}

// The most that is promised to be planned is planned: a search that its seconds end tells bowls, every zone, and how
// far it may be from the best.
TEST(Bounded, TheLargestHeadIsPlanned) {
  wire::Json asked = large();
  asked.erase("bowls");
  asked["options"]["scenarios"] = 1;
  asked["options"]["seconds"] = 15 * kSlower;
  const auto got = answer("plan", asked, house().sources(), {});
  ASSERT_TRUE(got) << got.error()[0].code;
  EXPECT_FALSE((*got)["bowls"].empty());
  EXPECT_EQ((*got)["zones"].size(), 48u);
  EXPECT_GE((*got)["report"]["gap"].get<double>(), 0);
}

TEST(Bounded, MoreScenariosThanAHeadCanBeSearchedWithAreRefused) {
  for (const std::string verb : {"formulate", "schedule", "plan", "review", "convert", "substitute"}) {
    wire::Json asked = large();
    if (verb == "schedule") asked.erase("bowls");
    asked["options"]["scenarios"] = 86;  // 192 kinds of hair
    const auto got = answer(verb, asked, house().sources(), {}, kBeside);
    ASSERT_FALSE(got) << verb;
    EXPECT_EQ(got.error()[0].code, "too_many_scenarios") << verb;
    EXPECT_EQ(got.error()[0].params.at("max"), "85") << verb;
  }
}

// Verbs whose answer cannot say that it was cut short are not answered then.
TEST(Bounded, NoReviewIsCutShort) {
  for (const std::string verb : {"review", "convert", "substitute"}) {
    wire::Json asked = document("my_own_bowls");
    asked["options"]["seconds"] = 1e-3;
    const auto got = answer(verb, asked, house().sources(), {}, kBeside);
    ASSERT_FALSE(got) << verb;
    EXPECT_EQ(got.error()[0].code, "out_of_time") << verb;
  }
}

}  // namespace
}  // namespace strandline::salon
