// Every rule of knowledge/rules speaks where it should, and not in the nearest case where it should not.
#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "engine/tests/rules/visit.h"
#include "rules/evaluate.h"

namespace strandline {
namespace {

using namespace testing_support;
using Change = std::function<void(Visit&)>;

struct Case {
  const char *rule, *range, *zone;
  Change yes, no;
  const char* other_range = nullptr;  // of the nearest case; the same where there is none
  const char* other_zone = nullptr;
};

constexpr const char *kScalp = "top/regrowth", *kLengths = "top/lengths", *kPackets = "lights/packets";
const Change kAsItIs = [](Visit&) {};

Change service(ServiceKind kind, std::optional<double> weeks, int span = 1) {
  return
      [=](Visit& v) { v.head.areas[0].spans[static_cast<size_t>(span)].services.push_back({kind, weeks, 1, false}); };
}
Change told(std::function<void(Answers&)> set) {
  return [=](Visit& v) { set(v.answers); };
}
Change tested(std::function<void(Visit&)> set) { return set; }
Change on_lengths(std::function<void(Span&)> set) {
  return [=](Visit& v) { set(lengths(v)); };
}
Change on_regrowth(std::function<void(Span&)> set) {
  return [=](Visit& v) { set(regrowth(v)); };
}
Change origin(ColourOrigin o, double share, int at = 1) {
  return [=](Visit& v) {
    Span& s = v.head.areas[0].spans[static_cast<size_t>(at)];
    s.populations = {pigmented(share, 6), pigmented(1 - share, 6)};
    s.populations[0].origin = o;
  };
}
Change white_at_scalp(double share) {
  return [=](Visit& v) {
    regrowth(v).populations = {pigmented(1 - share, 6)};
    if (share > 0) regrowth(v).populations.push_back(white(share));
  };
}
Change wish(double level, Tone tone = Tone::natural) {
  return [=](Visit& v) { v.aims[0].level = level, v.aims[0].tone = tone; };
}
Change all(std::vector<Change> changes) {
  return [=](Visit& v) {
    for (const Change& c : changes) c(v);
  };
}
Change parts(std::vector<Part> p, double minutes = 35, const std::string& range = "tint") {
  return [=](Visit& v) { v.bowls = {bowl_of(range, p, minutes)}; };
}
Product* find_strongest(Shelf& shelf) {
  for (Product& p : shelf.products)
    if (p.id == "dev120") return &p;
  return nullptr;
}
Change in_us() {
  return [](Visit& v) { v.policy.rules.country = "us"; };
}
Change metal(MetalTest t) {
  return all({service(ServiceKind::home_colour, 20), on_lengths([=](Span& s) { s.metal_test = t; })});
}
Change test_on(const std::string& day, const std::string& read) {
  return tested([=](Visit& v) { v.skin_test = day, v.test.read = read; });
}
Change incident(IncidentKind kind, double weeks, bool healed) {
  return told([=](Answers& a) { a.incidents.push_back({kind, weeks, healed}); });
}
Change scalp_is(Scalp s, std::optional<double> weeks = {}) {
  return told([=](Answers& a) { a.scalp = s, a.scalp_weeks = weeks; });
}
Change face(FaceHair f) {
  return [=](Visit& v) { v.head.areas[0].face = f; };
}
Change loss(HairLoss l) {
  return [=](Visit& v) { v.head.areas[0].loss = l; };
}
Change strand(StrandCondition c) {
  return on_lengths([=](Span& s) { s.strand = StrandTest{"tint", 30, 6, c}; });
}

std::vector<Case> person() {
  return {
      {"age.ask", "tint", kScalp, told([](Answers& a) { a.age = AgeBand::unknown; }), kAsItIs},
      {"age.dye", "acid", kScalp, told([](Answers& a) { a.age = AgeBand::under_16; }),
       told([](Answers& a) { a.age = AgeBand::from_16_to_17; })},
      {"age.lightener", "bleach", kScalp, told([](Answers& a) { a.age = AgeBand::from_16_to_17; }),
       told([](Answers& a) { a.age = AgeBand::from_16_to_17, a.guardian_signed = YesNo::yes; })},
      {"react.ask", "tint", kScalp, told([](Answers& a) { a.reaction = ColourReaction::unknown; }), kAsItIs},
      {"tattoo.ask", "tint", kScalp, told([](Answers& a) { a.tattoo = TattooReaction::unknown; }), kAsItIs},
      {"scalp.ask", "tint", kScalp, scalp_is(Scalp::unknown), kAsItIs},
      {"test.lead", "tint", kScalp, test_on("2026-03-08", "2026-03-09"), test_on("2026-03-07", "2026-03-09")},
      {"test.us", "tint", kScalp, all({in_us(), test_on("2026-03-06", "2026-03-09")}),
       all({in_us(), test_on("2026-03-07", "2026-03-09")})},
      {"test.positive", "direct", kScalp, tested([](Visit& v) { v.test.result = TestResult::itch; }), kAsItIs},
      {"test.age", "tint", kScalp, test_on("2025-09-01", "2025-09-03"), test_on("2025-09-15", "2025-09-17")},
      {"test.void", "tint", kScalp, tested([](Visit& v) { v.test.maker = "somebody else (invented)"; }), kAsItIs},
      {"test.offskin", "demi", kLengths, tested([](Visit& v) { v.skin_test.clear(); }), kAsItIs},
      {"test.clear", "tint", kScalp, kAsItIs, tested([](Visit& v) { v.test.result = TestResult::unknown; })},
      {"react.colour", "acid", kLengths, told([](Answers& a) { a.reaction = ColourReaction::swelling; }),
       told([](Answers& a) { a.reaction = ColourReaction::stinging; })},
      {"react.tattoo", "demi", kScalp, told([](Answers& a) { a.tattoo = TattooReaction::reaction; }),
       told([](Answers& a) { a.tattoo = TattooReaction::no_reaction; })},
      {"react.lightener", "bleach", kPackets, told([](Answers& a) { a.lightener_reaction = YesNo::yes; }), kAsItIs},
      {"react.related", "tint", kScalp, told([](Answers& a) { a.related_allergy = YesNo::yes; }), kAsItIs},
      {"scalp.label", "tint", kLengths, scalp_is(Scalp::sensitive), kAsItIs},
      {"scalp.lightener", "bleach", kScalp, scalp_is(Scalp::sunburnt), scalp_is(Scalp::sunburnt), nullptr, kPackets},
      {"scalp.infect", "remover", kLengths, scalp_is(Scalp::infested), kAsItIs},
      {"scalp.plaque", "tint", kScalp, scalp_is(Scalp::plaque_calm), scalp_is(Scalp::plaque_calm), nullptr, kLengths},
      {"scalp.surgery", "tint", kScalp, scalp_is(Scalp::operated, 3), scalp_is(Scalp::operated, 4)},
      {"med.pregnant", "tint", kScalp, told([](Answers& a) { a.pregnancy_week = 20; }), kAsItIs},
      {"med.cancer", "tint", kScalp, told([](Answers& a) { a.treatment_ended = 5; }),
       told([](Answers& a) { a.treatment_ended = 6; })},
      {"med.skin", "high", kScalp, told([](Answers& a) { a.medicine = Medicine::skin_thinning; }),
       told([](Answers& a) { a.medicine = Medicine::other; })},
      {"incident.today", "direct", kLengths, incident(IncidentKind::sting, 0, true),
       incident(IncidentKind::sting, 1, true)},
      {"incident.recent", "tint", kScalp, incident(IncidentKind::burn, 3, true), incident(IncidentKind::burn, 9, true)},
      {"face.eu", "direct", kScalp, face(FaceHair::brows), face(FaceHair::beard)},
      {"face.us", "direct", kScalp, all({in_us(), face(FaceHair::brows)}), face(FaceHair::brows)},
      {"face.beard", "tint", kScalp, face(FaceHair::beard), kAsItIs},
      {"loss.shed", "tint", kScalp, loss(HairLoss::patchy), loss(HairLoss::thinning)},
      {"guard.hands", "tint", kScalp, kAsItIs, in_us()},
      {"guard.eyes", "tint", kScalp, parts({{"tint6", 30}, {"dev90", 30}}), parts({{"tint6", 30}, {"dev60", 30}})},
      {"guard.lungs", "bleach", kPackets, told([](Answers& a) { a.asthma = YesNo::yes; }), kAsItIs},
  };
}

std::vector<Case> history() {
  using K = ServiceKind;
  return {
      {"metal.needed", "tint", kLengths, service(K::home_colour, 20),
       [](Visit& v) { lengths(v).services.push_back({K::home_colour, 20, 5, true}); }},
      {"metal.positive", "acid", kLengths, metal(MetalTest::heat), metal(MetalTest::slightly_lighter)},
      {"metal.nochange", "tint", kLengths, metal(MetalTest::no_change), metal(MetalTest::slightly_lighter)},
      {"metal.passed", "tint", kLengths, metal(MetalTest::slightly_lighter), metal(MetalTest::not_done)},
      {"stretch.low", "tint", kLengths, on_lengths([](Span& s) { s.wet_stretch_percent = 39; }),
       on_lengths([](Span& s) { s.wet_stretch_percent = 40; })},
      {"stretch.gummy", "demi", kLengths,
       on_lengths([](Span& s) { s.wet_stretch_percent = 61, s.stretch_returns = false; }),
       on_lengths([](Span& s) { s.wet_stretch_percent = 61; })},
      {"stretch.untested", "bleach", kLengths, origin(ColourOrigin::tinted, 1), kAsItIs},
      {"porosity.high", "tint", kLengths, on_lengths([](Span& s) { s.porosity.value = 2; }),
       on_lengths([](Span& s) { s.porosity.value = 1.9; })},
      {"porosity.spent", "bleach", kLengths, on_lengths([](Span& s) { s.porosity.value = 2.8; }),
       on_lengths([](Span& s) { s.porosity.value = 2.7; })},
      {"strand.needed", "bleach", kLengths, origin(ColourOrigin::tinted, 1),
       all({origin(ColourOrigin::tinted, 1), strand(StrandCondition::kept)})},
      {"strand.failed", "tint", kLengths, strand(StrandCondition::weak), strand(StrandCondition::weak), "demi"},
      {"straight.hydroxide.lightener", "bleach", kLengths, service(K::relaxed, 500),
       service(K::straightened_mild, 500)},
      {"straight.hydroxide.colour", "demi", kLengths, service(K::straightened_unknown, {}), kAsItIs},
      {"straight.thio.lightener", "bleach", kLengths, service(K::straightened_mild, 7), service(K::permed, 7)},
      {"straight.thio.colour", "high", kLengths, service(K::straightened_mild, 3), kAsItIs},
      {"straight.overlap", "tint", kScalp, service(K::relaxed, 1), kAsItIs},
      {"perm.weeks", "tint", kLengths, service(K::permed, 1), service(K::permed, 9)},
      {"smooth.aldehyde", "tint", kLengths, service(K::smoothed, 1), service(K::smoothed, 2)},
      {"plant.pure", "tint", kLengths,
       all({service(K::plant_colour, 30), on_lengths([](Span& s) { s.metal_test = MetalTest::slightly_lighter; })}),
       service(K::plant_colour, 30)},
      {"history.ask", "tint", kLengths, on_lengths([](Span& s) { s.history_unknown = true; }), kAsItIs},
      {"direct.under", "bleach", kLengths, origin(ColourOrigin::direct, 0.4), origin(ColourOrigin::tinted, 0.4)},
      {"minerals", "tint", kLengths, service(K::minerals, 1), service(K::minerals, 1), "chelate"},
      {"loss.extensions", "bleach", kLengths, on_lengths([](Span& s) { s.extension = true; }), kAsItIs},
      {"interval.lightener", "bleach", kLengths, all({origin(ColourOrigin::lightened, 1), service(K::lightened, 3)}),
       all({origin(ColourOrigin::lightened, 1), service(K::lightened, 4)})},
      {"interval.colour", "tint", kScalp, service(K::coloured, 2, 0), service(K::coloured, 3, 0)},
      {"overlap.lightened", "bleach", kScalp, origin(ColourOrigin::lightened, 0.2, 0), kAsItIs},
      {"overlap.coloured", "tint", kLengths, origin(ColourOrigin::tinted, 0.6), origin(ColourOrigin::tinted, 0.4)},
      {"overlap.longgrowth", "tint", kScalp, all({wish(8), on_regrowth([](Span& s) { s.to_cm = 2.6; })}), wish(8)},
  };
}

std::vector<Case> classes() {
  const Change nine_to_twelve = [](Visit& v) { v.shelf.ranges[0].developer_percents.push_back(12); };
  const Change hairline = [](Visit& v) { v.head.areas[0].kind = AreaKind::temples; };
  return {
      {"dev.law", "tint", kScalp, kAsItIs, kAsItIs, "direct"},
      {"dev.permanent", "tint", kScalp, kAsItIs, kAsItIs, "demi"},
      {"dev.highlift", "high", kScalp, kAsItIs, nine_to_twelve, "tint"},
      {"dev.demi", "acid", kScalp, kAsItIs, kAsItIs, "tint"},
      {"dev.lightener.scalp", "bleach", kScalp, kAsItIs, kAsItIs, nullptr, kPackets},
      {"dev.lightener.open", "bleach", kLengths, kAsItIs, kAsItIs, nullptr, kPackets},
      {"dev.lightener.foil", "bleach", kPackets, kAsItIs, kAsItIs, nullptr, kLengths},
      {"dev.hairline", "tint", kScalp, hairline, kAsItIs},
      {"dev.lightened", "tint", kLengths, origin(ColourOrigin::lightened, 0.6), origin(ColourOrigin::lightened, 0.5)},
      {"dev.first", "soft", kScalp, kAsItIs, kAsItIs, "chelate"},
      {"range.own", "tint", kScalp, parts({{"tint6", 30}, {"dev120", 30}}), parts({{"tint6", 30}, {"dev60", 30}})},
      {"time.permanent", "tint", kScalp, kAsItIs, kAsItIs, "high"},
      {"time.highlift", "high", kScalp, kAsItIs, kAsItIs, "tint"},
      {"time.demi", "acid", kScalp, kAsItIs, kAsItIs, "tint"},
      {"time.toner", "acid", kLengths, origin(ColourOrigin::lightened, 1),
       all({origin(ColourOrigin::lightened, 1), wish(4.5)})},
      {"time.virgin.scalp", "tint", kScalp, wish(7), wish(6.5)},
      {"time.lightener.scalp", "bleach", kScalp, kAsItIs, kAsItIs, nullptr, kPackets},
      {"time.lightener.packet", "bleach", kPackets, kAsItIs, kAsItIs, nullptr, kScalp},
      {"time.first", "remover", kLengths, kAsItIs, kAsItIs, "tint"},
      {"rounds.lightener", "bleach", kPackets, kAsItIs, kAsItIs, "remover"},
      {"rounds.remover", "remover", kLengths, kAsItIs, kAsItIs, "bleach"},
      {"cond.colour", "tint", kScalp, kAsItIs, kAsItIs, "direct"},
      {"cond.lightener", "bleach", kScalp, kAsItIs, kAsItIs, "tint"},
  };
}

std::vector<Case> wishes() {
  return {
      {"lift.deposit", "demi", kScalp, wish(7.5), wish(7)},
      {"lift.artificial", "tint", kLengths, all({origin(ColourOrigin::tinted, 1), wish(7)}),
       all({origin(ColourOrigin::tinted, 1), wish(6.7)})},
      {"lift.cool", "tint", kScalp, wish(9, Tone::ash), wish(8, Tone::ash)},
      {"wish.vivid", "demi", kLengths, all({origin(ColourOrigin::lightened, 1), wish(7, Tone::violet)}),
       all({origin(ColourOrigin::lightened, 1), wish(9, Tone::violet)})},
      {"lift.permanent", "tint", kScalp,
       all({wish(10), on_regrowth([](Span& s) { s.populations = {pigmented(1, 5.5)}; })}), wish(10)},
      {"lift.lightener", "bleach", kPackets,
       [](Visit& v) {
         wish(10)(v);
         v.head.areas[1].spans[0].populations = {pigmented(1, 3)};
       },
       wish(10)},
      {"highlift.base", "high", kScalp, on_regrowth([](Span& s) { s.populations = {pigmented(1, 5)}; }), kAsItIs},
      {"highlift.white", "high", kScalp, white_at_scalp(0.25), white_at_scalp(0.2)},
      {"white.shade", "tint", kScalp, all({white_at_scalp(0.4), wish(8)}), all({white_at_scalp(0.4), wish(7)})},
      {"white.demi", "acid", kScalp, white_at_scalp(0.6), white_at_scalp(0.5)},
      {"white.natural", "tint", kScalp, white_at_scalp(0.3), white_at_scalp(0.2)},
      {"white.developer", "tint", kScalp, white_at_scalp(0.15), white_at_scalp(0.1)},
      {"white.areas", "demi", kScalp,
       [](Visit& v) {
         v.head.areas[0].spans[0].populations = {pigmented(0.4, 6), white(0.6)};
         v.head.areas.push_back(area("nape", AreaKind::nape, 100, {span("all", 0, 10, 0.3, 6)}));
         v.head.areas.erase(v.head.areas.begin() + 1);
       },
       [](Visit& v) {
         v.head.areas[0].spans[0].populations = {pigmented(0.4, 6), white(0.6)};
         v.head.areas.push_back(area("nape", AreaKind::nape, 100, {span("all", 0, 10, 0.35, 6)}));
         v.head.areas.erase(v.head.areas.begin() + 1);
       }},
      {"white.soften", "tint", kScalp, all({white_at_scalp(0.5), on_regrowth([](Span& s) { s.resistance = 0.4; })}),
       all({white_at_scalp(0.5), on_regrowth([](Span& s) { s.resistance = 0.3; })})},
      {"fill.needed", "demi", kLengths, all({origin(ColourOrigin::lightened, 1), wish(3.5)}),
       all({origin(ColourOrigin::lightened, 1), wish(4)})},
      {"fill.how", "filler", kLengths, all({origin(ColourOrigin::lightened, 1), wish(3.5)}),
       all({origin(ColourOrigin::lightened, 1), wish(4)})},
      {"toner.check", "acid", kLengths, origin(ColourOrigin::lightened, 1), kAsItIs},
      {"mix.corrector", "tint", kScalp, parts({{"tint6", 20}, {"tint-corrector", 10}, {"dev60", 30}}),
       parts({{"tint6", 30}, {"tint-corrector", 10}, {"dev60", 40}})},
      {"mix.clear", "tint", kScalp, parts({{"tint6", 10}, {"tint-clear", 20}, {"dev60", 30}}),
       parts({{"tint6", 15}, {"tint-clear", 15}, {"dev60", 30}})},
      {"mix.levels", "tint", kScalp, parts({{"tint4", 15}, {"tint8", 15}, {"dev60", 30}}),
       parts({{"tint4", 15}, {"tint6", 15}, {"dev60", 30}})},
      {"mix.makers", "tint", kScalp, parts({{"tint6", 15}, {"demi6", 15}, {"dev60", 30}}),
       parts({{"tint6", 30}, {"dev60", 30}})},
      {"mix.life", "tint", kScalp, kAsItIs, kAsItIs, "direct"},
      {"heat.scalp", "bleach", kScalp, kAsItIs, kAsItIs, nullptr, kPackets},
      {"heat.other", "tint", kLengths, kAsItIs, kAsItIs, nullptr, kScalp},
      {"law.limits", "tint", kScalp,
       all({parts({{"tint6", 5}, {"dev120", 200}}), [](Visit& v) { find_strongest(v.shelf)->peroxide_percent = 18; }}),
       parts({{"tint6", 30}, {"dev60", 30}})},
  };
}

std::vector<Case> every_case() {
  std::vector<Case> all_of_them;
  for (auto part : {person(), history(), classes(), wishes()})
    all_of_them.insert(all_of_them.end(), part.begin(), part.end());
  return all_of_them;
}

bool speaks_there(Visit v, const Change& change, const std::string& rule, const std::string& range,
                  const std::string& zone) {
  change(v);
  const Survey s = survey(v);
  const Range* own = find_range(v.shelf, range);
  for (const ZoneRef& z : s.refs)
    for (const Rule& r : rules())
      if (z.id == zone && r.id == rule &&
          speaks(r, {v, *z.area, *z.span, *own, class_in_rules(*own, *z.area, *z.span), wish_for(s, z.id),
                     v.bowls.empty() ? nullptr : &v.bowls[0], s.white_apart}))
        return true;
  return false;
}

TEST(EveryRule, SpeaksWhereItShouldAndNotInTheNearestOtherCase) {
  for (const Case& c : every_case()) {
    EXPECT_TRUE(speaks_there(quiet_visit(), c.yes, c.rule, c.range, c.zone)) << c.rule;
    EXPECT_FALSE(speaks_there(quiet_visit(), c.no, c.rule, c.other_range ? c.other_range : c.range,
                              c.other_zone ? c.other_zone : c.zone))
        << c.rule << " should be quiet";
  }
}

TEST(EveryRule, HasItsCase) {
  std::set<std::string_view> tried;
  for (const Case& c : every_case()) tried.insert(c.rule);
  for (const Rule& r : rules()) EXPECT_TRUE(tried.contains(r.id)) << r.id;
  EXPECT_GT(tried.size(), 100u);
}

TEST(EveryRule, AsksOnlyForFactsThatThereAre) {
  for (const Rule& r : rules())
    for (std::string_view condition : r.when)
      while (!condition.empty()) {
        const std::string_view word = condition.substr(0, condition.find(' '));
        EXPECT_NE(find_fact(word.substr(0, word.find_first_of("<>"))), nullptr) << r.id << ": " << word;
        condition = word.size() == condition.size() ? "" : condition.substr(word.size() + 1);
      }
}

TEST(EveryRule, HasASourceAndSaysWhatCanBeDone) {
  for (const Rule& r : rules()) {
    EXPECT_FALSE(r.source.empty()) << r.id;
    if (r.says == Says::stop || r.says == Says::ask) {
      EXPECT_FALSE(r.today.empty()) << r.id << " stops and says nothing that can be done";
    }
    if (r.standing == Standing::law) {
      EXPECT_TRUE(r.source.starts_with("law:")) << r.id;
    }
  }
}

}  // namespace
}  // namespace strandline
