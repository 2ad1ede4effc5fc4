#include "strandline/wire/document.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "strandline/wire/encode.h"
#include "strandline/wire/visit_fields.h"

namespace strandline::wire {
namespace {

Json minimal() {
  return *parse(R"({"schema": "strandline.visit/1",
    "head": {"areas": [{"id": "top", "spans": [{"id": "regrowth", "to_cm": 2, "level": 5, "white_percent": 40}]}]},
    "aims": [{"zone": "*", "level": 6}]})");
}

Sources sources() {
  return {
      [](const std::string& name) { return name.empty() || name == "demo" ? std::optional(Shelf{}) : std::nullopt; },
      [](const std::string& name) { return name.empty() || name == "house" ? std::optional(Policy{}) : std::nullopt; }};
}

Problems problems_of(const Json& document) {
  const auto read = read_visit(document, sources());
  return read ? Problems{} : read.error();
}

// The document with one value replaced.
Json with(const char* pointer, Json value) {
  Json document = minimal();
  document[Json::json_pointer(pointer)] = std::move(value);
  return document;
}

void expect_one(const Json& document, const std::string& code, const std::string& path) {
  const Problems found = problems_of(document);
  ASSERT_EQ(found.size(), 1u) << print(problems_json(found));
  EXPECT_EQ(found[0].code, code);
  EXPECT_EQ(found[0].path, path);
}

constexpr const char* span0 = "/head/areas/0/spans/0";

TEST(ReadVisit, ExpandsTheShorthand) {
  const auto read = read_visit(minimal(), sources());
  ASSERT_TRUE(read);
  const auto& populations = read->visit.head.areas[0].spans[0].populations;
  ASSERT_EQ(populations.size(), 2u);
  EXPECT_EQ(populations[0].kind, FibreKind::pigmented);
  EXPECT_EQ(populations[0].level, (Reading{5, doubt_of_level()}));
  EXPECT_DOUBLE_EQ(populations[0].share.value, 0.6);
  EXPECT_EQ(populations[1].kind, FibreKind::white);
  EXPECT_EQ(populations[1].share, (Reading{0.4, doubt_of_white_percent() / 100}));
}

TEST(ReadVisit, ShorthandWithoutWhiteIsOnePopulation) {
  Json document = with("/head/areas/0/spans/0/white_percent", 0);
  EXPECT_EQ(read_visit(document, sources())->visit.head.areas[0].spans[0].populations.size(), 1u);
  document = with("/head/areas/0/spans/0/white_percent", 100);
  const auto all_white = read_visit(document, sources())->visit.head.areas[0].spans[0].populations;
  ASSERT_EQ(all_white.size(), 1u);
  EXPECT_EQ(all_white[0].kind, FibreKind::white);
}

TEST(ReadVisit, TakesAReadingWithItsDoubt) {
  const auto read = read_visit(with("/head/areas/0/spans/0/level", {{"value", 4}, {"sd", 0.6}}), sources());
  ASSERT_TRUE(read);
  EXPECT_EQ(read->visit.head.areas[0].spans[0].populations[0].level, (Reading{4, 0.6}));
}

TEST(ReadVisit, NamesEachBadValueWithItsPlace) {
  const std::string span = span0;
  expect_one(with("/head/areas/0/spans/0/level", 14), "out_of_range", span + "/level");
  expect_one(with("/head/areas/0/spans/0/white_percent", 130), "out_of_range", span + "/white_percent");
  expect_one(with("/head/areas/0/spans/0/level", "five"), "wrong_type", span + "/level");
  expect_one(with("/head/areas/0/spans/0/level", {{"value", 4}, {"sd", -1}}), "out_of_range", span + "/level/sd");
  expect_one(with("/head/areas/0/spans/0/tone", "goldy"), "unknown_word", span + "/tone");
  expect_one(with("/head/areas/0/id", "tab\there"), "control_character", "/head/areas/0/id");
  expect_one(with("/head/areas/0/id", std::string(300, 'x')), "too_long", "/head/areas/0/id");
  expect_one(with("/date", "2025-02-29"), "bad_date", "/date");
  expect_one(with("/schema", "strandline.visit/9"), "unknown_schema", "/schema");
  expect_one(with("/shelf", "attic"), "unknown_name", "/shelf");
  expect_one(with("/options", {{"scenarios", 2.5}}), "wrong_type", "/options/scenarios");
  expect_one(
      with("/bowls",
           *parse(R"([{"label":"A","range":"r","minutes":5,"zones":["a/b"],"parts":[{"product":"p","grams":-1}]}])")),
      "out_of_range", "/bowls/0/parts/0/grams");
}

TEST(ReadVisit, SuggestsTheNearestKeyAndWord) {
  Json document = minimal();
  document["haed"] = 1;
  EXPECT_EQ(problems_of(document)[0].params.at("nearest"), "head");
  EXPECT_EQ(problems_of(with("/head/areas/0/spans/0/tone", "cooper"))[0].params.at("nearest"), "copper");
}

TEST(ReadVisit, ReportsEverythingAtOnce) {
  Json document = with("/head/areas/0/spans/0/level", 14);
  document["colour"] = true;
  document.erase("schema");
  EXPECT_EQ(problems_of(document).size(), 3u);
}

TEST(ReadVisit, KeepsAtMostAHundredProblems) {
  Json document = minimal();
  for (int i = 0; i < 5000; ++i) document["key" + std::to_string(i)] = i;
  EXPECT_EQ(problems_of(document).size(), kProblemsMax);
}

TEST(ReadVisit, RefusesPopulationsBesideShorthand) {
  expect_one(with("/head/areas/0/spans/0/populations", *parse(R"([{"share": 1}])")), "populations_and_shorthand",
             span0);
}

TEST(ReadVisit, AnswersAnyTypeAnywhere) {
  for (const char* value : {"null", "true", "3", "\"x\"", "[]", "{}", "[[]]"}) {
    const Json odd = *parse(value);
    (void)problems_of(odd);
    const Json flat = minimal().flatten();
    for (const auto& [place, old] : flat.items()) (void)problems_of(with(place.c_str(), odd));
  }
}

TEST(PlaceIn, MovesShorthandProblemsToWhereTheyAreWritten) {
  const std::string span = span0;
  const Problems moved = place_in(minimal(), {{"x", span + "/populations/0/level", {}},
                                              {"x", span + "/populations/1/share", {}},
                                              {"x", span + "/populations", {}},
                                              {"x", "/aims/0/zone", {}},
                                              {"x", "/steps/1/formula/range", {}}});
  EXPECT_EQ(moved[0].path, span + "/level");
  EXPECT_EQ(moved[1].path, span + "/white_percent");
  EXPECT_EQ(moved[2].path, span);
  EXPECT_EQ(moved[3].path, "/aims/0/zone");
  EXPECT_EQ(moved[4].path, "/bowls/1/range");
}

TEST(Codec, RoundTripsAHead) {
  const auto read = read_visit(minimal(), sources());
  const Json written = encode(read->visit.head);
  Head again;
  Problems problems;
  decode(written, again, At(problems, ""));
  EXPECT_TRUE(problems.empty());
  EXPECT_EQ(encode(again), written);
}

}  // namespace
}  // namespace strandline::wire
