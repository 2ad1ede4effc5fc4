// Every verb ends with whoever waits for it, and in its time.
#include <gtest/gtest.h>

#include <atomic>
#include <chrono>

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

double seconds_since(Clock::time_point begin) { return std::chrono::duration<double>(Clock::now() - begin).count(); }

TEST(Bounded, EveryHeavyVerbIsGivenUpWithItsClient) {
  const wire::Json asked = large();
  for (const char* verb : {"predict", "formulate", "schedule", "plan", "reach", "fade", "grow", "what-if", "review"}) {
    wire::Json own = asked;
    if (std::string_view(verb) == "schedule") own["bowls"] = wire::Json::array();
    const auto begin = Clock::now();
    const auto got = answer(verb, own, house().sources(), {serial_for, [] { return true; }});
    ASSERT_FALSE(got) << verb;
    EXPECT_EQ(got.error()[0].code, "given_up") << verb << ' ' << got.error()[0].path;
    EXPECT_LT(seconds_since(begin), 1.5) << verb;
  }
}

TEST(Bounded, GivingUpInTheMiddleTakesNoTime) {
  const wire::Json asked = large();
  for (const char* verb : {"plan", "review", "reach", "what-if"}) {
    const auto end = Clock::now() + std::chrono::milliseconds(1500);
    const auto got = answer(verb, asked, house().sources(), {serial_for, [end] { return Clock::now() >= end; }});
    EXPECT_LT(seconds_since(end), 1.5) << verb;
    if (!got) {
      EXPECT_EQ(got.error()[0].code, "given_up") << verb;
    }
  }
}

TEST(Bounded, ASearchEndsCloseToItsSeconds) {
  for (wire::Json asked : {large(), document("regrowth_white_hairline")}) {
    asked["options"]["seconds"] = 0.5;
    const auto begin = Clock::now();
    const auto got = answer("plan", asked, house().sources(), {});
    EXPECT_LT(seconds_since(begin), 3.5);
    if (!got) {
      EXPECT_EQ(got.error()[0].code, "out_of_time");
      EXPECT_EQ(got.error()[0].params.at("seconds"), "0.5");
    }
  }
}

}  // namespace
}  // namespace strandline::salon
