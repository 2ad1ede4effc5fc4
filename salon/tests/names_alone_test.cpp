// What every salon starts with: a shelf of names alone.
#include <gtest/gtest.h>

#include <filesystem>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"

namespace strandline::salon {
namespace {

wire::Json read_json(const std::filesystem::path& file) {
  const auto text = read_file(file, 64u << 20);
  return wire::parse(text ? *text : "").value();
}

TEST(NamesAlone, AShelfWithoutASwatchPlansTheDemoVisits) {
  const std::filesystem::path knowledge = default_knowledge();
  wire::Json shelf = read_json(knowledge / "demo" / "shelf.json");
  for (wire::Json& p : shelf["products"]) p.erase("swatch"), p.erase("swatch_on"), p.erase("known_by");
  const House house = *open_house({.shelf = {}, .policy = {}, .knowledge = knowledge});
  int zones = 0;
  for (const char* name : {"all_over_brown", "half_white_three_to_seven", "toner_on_lightened"}) {
    wire::Json visit = read_json(knowledge / "demo" / "visits" / (std::string(name) + ".json"));
    visit["shelf"] = shelf;
    visit.erase("bowls");
    const auto planned =
        open_visit(visit, house.sources()).and_then([](const wire::ReadVisit& v) { return plan(v, {}); });
    ASSERT_TRUE(planned) << name << ' ' << planned.error()[0].code << ' ' << planned.error()[0].path;
    for (const wire::ZoneView& z : planned->plan.zones) {
      if (!z.landing || !z.reachable) continue;
      ++zones;
      EXPECT_NEAR(z.landing->level_error, 0, 0.5) << name << ' ' << z.zone;
    }
    for (const wire::BowlView& b : planned->plan.bowls)
      for (const wire::PartView& part : b.parts)
        EXPECT_TRUE(!part.known_by || *part.known_by == KnownBy::name) << part.product;
  }
  EXPECT_GT(zones, 0);
}

TEST(NamesAlone, ResultsTypedInAShelfAreRefused) {
  wire::Json shelf = read_json(default_knowledge() / "demo" / "shelf.json");
  shelf["ranges"][0]["results"] = {{"measured", 24}, {"simulated", false}};
  const auto read = wire::read_shelf(shelf);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error()[0].code, "unknown_key");
  EXPECT_EQ(read.error()[0].path, "/ranges/0");
}

}  // namespace
}  // namespace strandline::salon
