// Orders of steps and every class of the demo shelf, from documents to colours. What they are held to is common
// practice.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"

namespace strandline::salon {
namespace {

const std::filesystem::path root(STRANDLINE_SOURCE_DIR);

const House& house() {
  static const Result<House> h = open_house({.shelf = {}, .policy = {}, .knowledge = root / "knowledge"});
  return *h;
}

// What the bowls do to the hair, whatever the rules say of them: the chemistry is tried here.
std::map<std::string, wire::ZoneView> predicted(const wire::Json& document) {
  std::map<std::string, wire::ZoneView> zones;
  const auto asked = open_visit(document, house().sources());
  EXPECT_TRUE(asked) << document.dump() << (asked ? "" : asked.error()[0].code + asked.error()[0].path);
  if (!asked) return zones;
  std::vector<Step> steps;
  for (const Bowl& b : by_step(asked->visit.bowls)) steps.push_back({b.formula, b.zones});
  const auto seen = strandline::predict(asked->visit.head, steps, asked->visit.shelf);
  EXPECT_TRUE(seen);
  if (seen)
    for (const wire::ZoneView& z : wire::view(*seen, {}).zones) zones[z.zone] = z;
  return zones;
}

wire::Json document(const std::string& name) {
  return *wire::parse(*read_file((root / "knowledge/demo/visits" / (name + ".json")).string(), std::size_t{1} << 20));
}

std::map<std::string, wire::ZoneView> demo(const std::string& name) { return predicted(document(name)); }

double chroma(const Lab& c) { return std::hypot(c.a, c.b); }

double white_level(const wire::ZoneView& z) {
  for (const wire::PopulationView& p : z.planned.populations)
    if (p.kind == FibreKind::white) return p.level;
  return std::nan("");
}

TEST(Clock, EveryDemoVisitThatMixesHasOne) {
  int mixed = 0;
  for (const auto& file : std::filesystem::directory_iterator(root / "knowledge/demo/visits")) {
    wire::Json asked = document(file.path().stem());
    asked["options"]["scenarios"] = 2;
    const auto got = answer("plan", asked, house().sources(), {});
    ASSERT_TRUE(got) << file.path() << ' ' << got.error()[0].code;
    if ((*got)["bowls"].empty()) continue;
    ++mixed;
    EXPECT_FALSE((*got)["timeline"]["tasks"].empty()) << file.path() << (*got)["notes"].dump();
  }
  EXPECT_GE(mixed, 10);
}

TEST(Orders, SoftenedResistantWhiteTakesTheTint) {
  const auto zones = demo("soften_then_tint");
  const auto &soft = zones.at("front/regrowth"), &glassy = zones.at("temples/regrowth");
  EXPECT_LT(white_level(soft), white_level(glassy) - 0.4);
  EXPECT_LT(soft.planned.contrast_levels, glassy.planned.contrast_levels);
  EXPECT_LT(soft.planned.level, glassy.planned.level);
}

TEST(Misread, TheAnswerIsThatOfTheHeadReadOtherwise) {
  // Said as an option, or written into every reading: the same head.
  wire::Json asked = document("all_over_brown"), written = asked;
  const auto plan_of = [](const wire::Json& d) {
    return open_visit(d, house().sources()).and_then([](const wire::ReadVisit& v) { return plan(v, {}); });
  };
  const auto best = plan_of(asked);
  ASSERT_TRUE(best);
  wire::Json bowls = wire::Json::array();
  for (const wire::BowlView& b : best->plan.bowls) {
    wire::Json parts = wire::Json::array();
    for (const wire::PartView& p : b.parts) parts.push_back({{"product", p.product}, {"grams", p.grams}});
    bowls.push_back(
        {{"label", b.label}, {"range", b.range}, {"minutes", b.minutes}, {"zones", b.zones}, {"parts", parts}});
  }
  asked["bowls"] = bowls;
  written["bowls"] = bowls;
  for (wire::Json& area : written["head"]["areas"])
    for (wire::Json& span : area["spans"])
      if (span.contains("level")) {
        wire::Json& level = span["level"];
        (level.is_object() ? level["value"] : level) = (level.is_object() ? level["value"] : level).get<double>() - 0.5;
      }
  const auto as_read = predicted(asked);
  asked["options"]["misread"] = {{"reading", "level"}, {"by", -0.5}};
  const auto off = predicted(asked), by_hand = predicted(written);
  ASSERT_EQ(off.size(), by_hand.size());
  for (const auto& [zone, z] : off) {
    EXPECT_NEAR(z.planned.lab.l, by_hand.at(zone).planned.lab.l, 1e-9) << zone;
    EXPECT_LT(z.today.lab.l, as_read.at(zone).today.lab.l) << zone;
  }
}

TEST(Packets, TheyGetABowlOfTheirOwnAndGoOnFirst) {
  wire::Json asked = document("packets_and_regrowth");
  asked["options"]["seconds"] = 600;  // a sanitizer makes the search slow, and what it finds must not hang on that
  const auto answer =
      open_visit(asked, house().sources()).and_then([](const wire::ReadVisit& v) { return plan(v, {}); });
  ASSERT_TRUE(answer) << answer.error()[0].code << answer.error()[0].path;
  const auto own = std::find_if(answer->plan.bowls.begin(), answer->plan.bowls.end(), [](const wire::BowlView& b) {
    return b.zones == std::vector<std::string>{"top packets/regrowth"};
  });
  ASSERT_NE(own, answer->plan.bowls.end());
  ASSERT_FALSE(answer->timeline.order.empty());
  EXPECT_EQ(answer->timeline.order.front().zone, "top packets/regrowth");
}

TEST(Orders, ATonerTakesTheWarmthOfLightenedPacketsAndLeavesTheRest) {
  const auto zones = demo("lighten_then_tone");
  const auto &toned = zones.at("packets/lengths"), &warm = zones.at("packets left warm/lengths"),
             &between = zones.at("between the packets/lengths");
  EXPECT_GT(warm.planned.level, 8);
  EXPECT_GT(warm.planned.lab.b, 20) << "lightened hair is yellow";
  EXPECT_LT(chroma(toned.planned.lab), 0.9 * chroma(warm.planned.lab));
  EXPECT_NEAR(toned.planned.level, warm.planned.level, 1.2) << "a toner takes little depth";
  EXPECT_LT(delta_e_ab(between.planned.lab, between.today.lab), 1e-9) << "no bowl, no change";
  EXPECT_GT(toned.planned.level - between.planned.level, 1.5) << "highlights beside untouched hair";
}

TEST(Orders, FilledHairHoldsABrownWarmAndUnfilledGoesFlat) {
  const auto zones = demo("fill_then_tint");
  const auto &filled = zones.at("filled/lengths").planned, &flat = zones.at("not filled/lengths").planned;
  EXPECT_GT(filled.lab.a, flat.lab.a + 1);
  EXPECT_LT(filled.level, flat.level);
  EXPECT_NEAR(filled.level, 6, 1);
}

TEST(Orders, TintLiftsNoTintButARemoverMakesRoom) {
  const auto zones = demo("remove_then_tint");
  const auto &cleared = zones.at("cleared/lengths"), &over = zones.at("tinted over/lengths");
  EXPECT_LT(over.planned.level, over.today.level + 0.5) << "colour does not lift colour";
  EXPECT_GT(cleared.planned.level, over.planned.level + 1);
}

TEST(Orders, TheOtherOrderIsAnotherResult) {
  auto document = *wire::parse(*read_file((root / "knowledge/demo/visits/lighten_then_tone.json").string(), 1u << 20));
  document["bowls"][0]["step"] = 2;
  document["bowls"][1]["step"] = 1;
  EXPECT_GT(chroma(predicted(document).at("packets/lengths").planned.lab),
            chroma(demo("lighten_then_tone").at("packets/lengths").planned.lab) + 2);
}

TEST(Orders, AClockTakesStepAfterStepAndOneBowlAZoneInEach) {
  auto document = *wire::parse(*read_file((root / "knowledge/demo/visits/fill_then_tint.json").string(), 1u << 20));
  const auto asked = open_visit(document, house().sources());
  ASSERT_TRUE(asked);
  const auto planned = what_if(*asked, {});
  ASSERT_TRUE(planned);
  EXPECT_EQ(planned->timeline.steps.size(), 2u);
  const auto timeline = schedule(*asked, {});
  ASSERT_TRUE(timeline);
  EXPECT_EQ(timeline->finish_min, planned->timeline.finish_min);

  for (auto& bowl : document["bowls"]) bowl.erase("step");
  const auto at_once = open_visit(document, house().sources());
  ASSERT_TRUE(at_once);
  const auto refused = what_if(*at_once, {});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].code, "zone_in_two_bowls");
  EXPECT_FALSE(schedule(*at_once, {}));
}

// One bowl of a range by its longest-allowed target time on natural 6, on a tinted 4 over it, and on white hair.
struct Done {
  wire::ZoneView natural, tinted, white;
};

Done by(const std::string& range, const std::vector<std::pair<std::string, double>>& parts) {
  auto document = *wire::parse(R"({"schema": "strandline.visit/1", "client": "C", "head": {"areas": [
    {"id": "n", "spans": [{"id": "s", "from_cm": 4, "to_cm": 10, "level": 6}]},
    {"id": "t", "spans": [{"id": "s", "from_cm": 4, "to_cm": 10, "populations": [{"name": "coloured", "share": 1, "level": 4,
      "tone": "natural", "origin": "tinted", "natural_level": 6}]}]},
    {"id": "w", "spans": [{"id": "s", "from_cm": 4, "to_cm": 10, "level": 6, "white_percent": 100}]}]},
    "bowls": [{"label": "A", "zones": ["n/s", "t/s", "w/s"]}]})");
  document["bowls"][0]["range"] = range;
  document["bowls"][0]["minutes"] = find_range(*house().sources().shelf("demo"), range)->minutes.target;
  for (const auto& [product, grams] : parts)
    document["bowls"][0]["parts"].push_back({{"product", product}, {"grams", grams}});
  const auto zones = predicted(document);
  return {zones.at("n/s"), zones.at("t/s"), zones.at("w/s")};
}

TEST(DemoClasses, LiftFromMostToNone) {
  const double off = by("lightener-off-scalp", {{"lightener-powder", 30}, {"developer-6", 60}}).natural.lift_levels;
  const double on = by("lightener-on-scalp", {{"lightener-cream", 30}, {"developer-6", 60}}).natural.lift_levels;
  const double high = by("high-lift", {{"high-lift-10-natural", 30}, {"developer-12", 60}}).natural.lift_levels;
  const double tint = by("permanent", {{"permanent-7-natural", 30}, {"developer-6", 30}}).natural.lift_levels;
  const double demi = by("demi", {{"demi-7-natural", 30}, {"developer-1.5", 60}}).natural.lift_levels;
  const double acid = by("acid-demi", {{"acid-demi-7-natural", 30}, {"developer-1.5", 30}}).natural.lift_levels;
  EXPECT_GT(off, on);
  EXPECT_GT(on, tint);
  EXPECT_GT(high, tint + 1);
  EXPECT_GT(tint, 1);
  EXPECT_GT(tint, demi + 0.8);
  EXPECT_GT(demi, acid);
  EXPECT_LT(acid, 0.1);
  EXPECT_GE(acid, 0);
}

TEST(DemoClasses, ColourOnWhiteByEachThatCarriesIt) {
  // Common practice: a natural permanent shade is up to half a level lighter on white; a demi tones it, a level or two.
  const Done tint = by("permanent", {{"permanent-6-natural", 30}, {"developer-6", 30}});
  EXPECT_NEAR(tint.white.planned.level, 6.3, 0.45);
  for (const auto& [range, parts] : std::map<std::string, std::vector<std::pair<std::string, double>>>{
           {"demi", {{"demi-6-natural", 30}, {"developer-1.5", 60}}},
           {"acid-demi", {{"acid-demi-6-natural", 30}, {"developer-1.5", 30}}}})
    EXPECT_NEAR(by(range, parts).white.planned.level, 7.2, 0.8) << range;
  EXPECT_GT(by("direct", {{"direct-red", 40}}).white.planned.lab.a, 15);
  EXPECT_LT(by("direct", {{"direct-blue", 40}}).white.planned.lab.b, 0);
  EXPECT_EQ(by("direct", {{"direct-red", 40}}).natural.lift_levels, 0) << "no peroxide, no lift";
  EXPECT_GT(by("filler", {{"filler-7-copper", 40}}).white.planned.lab.a, 8);
  EXPECT_EQ(by("filler", {{"filler-7-copper", 40}}).natural.lift_levels, 0);
}

TEST(DemoClasses, ClearOnlyDilutesWhenAcidAndLiftsALittleWhenAlkaline) {
  const Done acid = by("acid-demi", {{"acid-demi-clear", 30}, {"developer-1.5", 30}});
  EXPECT_LT(acid.natural.deposit, 1e-6);
  EXPECT_LT(acid.natural.lift_levels, 0.1);
  const Done alkaline = by("permanent", {{"permanent-clear", 30}, {"developer-6", 30}});
  EXPECT_LT(alkaline.natural.deposit, 1e-6);
  EXPECT_GT(alkaline.natural.lift_levels, 1);
  EXPECT_GT(alkaline.natural.planned.lab.b, alkaline.natural.today.lab.b) << "lift shows warmth";
  const Done whole = by("acid-demi", {{"acid-demi-6-natural", 30}, {"developer-1.5", 30}}),
             half = by("acid-demi", {{"acid-demi-6-natural", 15}, {"acid-demi-clear", 15}, {"developer-1.5", 30}});
  EXPECT_NEAR(half.white.deposit / whole.white.deposit, 0.5, 0.05);
}

TEST(DemoClasses, RemoverTakesOxidativePigmentAndNoMelanin) {
  const Done d = by("remover", {{"remover-a", 30}, {"remover-b", 30}});
  EXPECT_LT(delta_e_ab(d.natural.planned.lab, d.natural.today.lab), 1e-9);
  EXPECT_GT(d.tinted.planned.level, d.tinted.today.level + 1);
  EXPECT_LT(d.tinted.planned.level, 6.7) << "not beyond what the tint itself had lifted";
}

TEST(DemoClasses, SofteningLiftsLittleAndChelatingNothing) {
  const Done soften = by("softener", {{"softener-cream", 30}, {"developer-6", 30}});
  EXPECT_GT(soften.natural.lift_levels, 0);
  EXPECT_LT(soften.natural.lift_levels, 1);
  EXPECT_EQ(soften.natural.deposit, 0);
  const Done chelate = by("chelating", {{"chelating-rinse", 40}});
  EXPECT_LT(delta_e_ab(chelate.natural.planned.lab, chelate.natural.today.lab), 1e-9);
  EXPECT_LT(delta_e_ab(chelate.tinted.planned.lab, chelate.tinted.today.lab), 1e-9);
}

TEST(DemoClasses, LightenerTakesTintMoreSlowlyThanPigment) {
  const Done d = by("lightener-off-scalp", {{"lightener-powder", 30}, {"developer-6", 60}});
  EXPECT_GT(d.tinted.planned.level, d.tinted.today.level + 1);
  EXPECT_LT(d.tinted.planned.level, d.natural.planned.level - 0.5);
}

TEST(DemoClasses, EveryRangeIsInventedPricedAndInStock) {
  const Shelf shelf = *house().sources().shelf("demo");
  EXPECT_TRUE(shelf.invented);
  for (const Range& r : shelf.ranges) {
    EXPECT_NE(r.maker.find("invented"), std::string::npos) << r.id;
    const auto holds = [&](const Product& p) { return p.range == r.id && p.stock_g > 0 && p.price_per_g > 0; };
    EXPECT_TRUE(std::any_of(shelf.products.begin(), shelf.products.end(), holds)) << r.id;
  }
}

}  // namespace
}  // namespace strandline::salon
