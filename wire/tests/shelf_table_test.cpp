// Lists of shades as salons keep them, put on a shelf.
#include "strandline/wire/shelf_table.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

#include "strandline/wire/document.h"

namespace strandline::wire {
namespace {

Json shelf() {
  return *parse(R"({"id": "mine", "title": "mine", "ranges": [
    {"id": "tint", "maker": "first", "name": "tint", "cls": "permanent"},
    {"id": "stain", "maker": "second", "name": "stain", "cls": "direct"},
    {"id": "powder", "maker": "second", "name": "powder", "cls": "lightener"}], "products": []})");
}

TableRead read(const std::string& text, const std::string& range = "tint", const Json& document = shelf(),
               std::optional<double> package_g = {}) {
  const auto out = read_table({text, range, package_g, {}}, document);
  EXPECT_TRUE(out) << out.error()[0].code;
  return out ? *out : TableRead{};
}

std::string refusal(const TableLine& line) { return line.problems.empty() ? "" : line.problems[0].code; }

TEST(ShelfTable, ReadsShadesByTheirWordsInFourLanguages) {
  const TableRead got = read("7 copper\n6 Kupfer\n5 cuivré\n8 cobrizo\n9 cendré\n4 natürlich\n10 Doré");
  ASSERT_EQ(got.document["products"].size(), 7u);
  const char* tones[] = {"copper", "copper", "copper", "copper", "ash", "natural", "gold"};
  const double levels[] = {7, 6, 5, 8, 9, 4, 10};
  for (std::size_t i = 0; i < 7; ++i) {
    const Json& p = got.document["products"][i];
    EXPECT_EQ(p["tone"], tones[i]);
    EXPECT_EQ(p["level"], levels[i]);
    EXPECT_EQ(p["cls"], "permanent");
    EXPECT_EQ(p["range"], "tint");
    EXPECT_FALSE(p.contains("price_per_g"));
    EXPECT_FALSE(p.contains("stock_g"));
  }
  EXPECT_EQ(got.document["products"][0]["id"], "tint-7-copper");
  EXPECT_EQ(got.document["products"][2]["name"], "5 cuivré");
  EXPECT_EQ(got.separator, "none");
}

TEST(ShelfTable, NeverReadsACode) {
  const TableRead got = read("7.4\t7 copper\n8.1\t8 ash\nQ-9\t9 violet");
  ASSERT_EQ(got.columns, (std::vector{TableColumn::code, TableColumn::name}));
  EXPECT_EQ(got.document["products"][0]["code"], "7.4");
  EXPECT_EQ(got.document["products"][0]["level"], 7);
  const TableRead alone = read("7.4\n8.1");
  EXPECT_EQ(alone.document["products"].size(), 0u);
  EXPECT_EQ(refusal(alone.lines[0]), "no_tone");
  // Nor in front of a word.
  EXPECT_EQ(refusal(read("7.4 natural").lines[0]), "no_level");
}

TEST(ShelfTable, KnowsTheHeadingOfAStrengthInFourLanguages) {
  for (const char* heading :
       {"Strength %", "Concentration", "Konzentration (%)", "Concentración", "Stärke", "Peróxido"}) {
    const TableRead got = read(std::string("Name;") + heading + "\ndeveloper;6\n", "");
    EXPECT_TRUE(got.by_heading) << heading;
    ASSERT_EQ(got.document["products"].size(), 1u) << heading;
    EXPECT_EQ(got.document["products"][0]["peroxide_percent"], 6) << heading;
  }
}

TEST(ShelfTable, TakesHeadingsMarksQuotesAndCommas) {
  const std::string text =
      "\xEF\xBB\xBF"
      "Nr.;Tiefe;Ton;Preis (EUR);Inhalt g;EAN;Notiz\r\n"
      "K7;7;Kupfer;\"9,50\";60;4000000000001;x\r\n"
      "\r\n"
      "\"K\"\"8\";8;asch;€ 12.00;100;;\r\n";
  const TableRead got = read(text);
  EXPECT_TRUE(got.by_heading);
  EXPECT_EQ(got.separator, "semicolon");
  ASSERT_EQ(got.document["products"].size(), 2u);
  const Json& first = got.document["products"][0];
  EXPECT_EQ(first["code"], "K7");
  EXPECT_EQ(first["name"], "7 Kupfer");
  EXPECT_NEAR(first["price_per_g"].get<double>(), 9.5 / 60, 1e-12);
  EXPECT_EQ(got.columns[5], TableColumn::unused);  // not a word it knows: told, not guessed
  EXPECT_EQ(got.document["products"][1]["code"], "K\"8");
  EXPECT_EQ(got.document["products"][1]["package_g"], 100);
}

TEST(ShelfTable, RefusesLineByLineAndKeepsTheRest) {
  const TableRead got = read(
      "code,name,price,package\n"
      "A1,7 copper,9.5,60\n"
      "A2,8 gold copper,9.5,60\n"
      "A3,9 moonlight,9.5,60\n"
      "A4,natural,9.5,60\n"
      "A5,6 ash,cheap,60\n"
      "A6,5 ash,9.5,\n"
      "A7,4 ash,9.5,1.000\n"
      "A1,7 copper,9.5,60\n"
      "A8,3 ash,9.5,60,more\n"
      "A9,\"2 ash,9.5");
  const char* want[] = {"",
                        "",
                        "two_tones",
                        "no_tone",
                        "no_level",
                        "not_a_number_here",
                        "price_without_package",
                        "thousands_or_not",
                        "line_twice",
                        "too_many_cells",
                        "quote_not_closed"};
  ASSERT_EQ(got.lines.size(), std::size(want));
  for (std::size_t i = 0; i < std::size(want); ++i) {
    EXPECT_EQ(refusal(got.lines[i]), want[i]) << got.lines[i].text;
    EXPECT_EQ(got.lines[i].line, static_cast<int>(i + 1));
  }
  EXPECT_EQ(got.document["products"].size(), 1u);
}

TEST(ShelfTable, AHueWithoutALevelIsACorrectorAndClearIsClear) {
  const TableRead got = read("blue\n7 red\nclear\nvioleta");
  EXPECT_EQ(got.document["products"][0]["cls"], "corrector");
  EXPECT_EQ(got.document["products"][0]["tone"], "ash");
  EXPECT_EQ(got.document["products"][2]["cls"], "clear");
  EXPECT_EQ(got.document["products"][3]["cls"], "corrector");
  EXPECT_EQ(read("blue", "stain").document["products"][0]["cls"], "direct");
}

TEST(ShelfTable, TakesDevelopersAndThingsWithoutAShade) {
  const TableRead bottles = read("developer 6 %\nEntwickler 1,5%\nwater", "");
  EXPECT_EQ(bottles.document["products"][0]["peroxide_percent"], 6);
  EXPECT_EQ(bottles.document["products"][1]["peroxide_percent"], 1.5);
  EXPECT_EQ(refusal(bottles.lines[2]), "no_strength");
  const TableRead powder = read("P1;white powder", "powder");
  EXPECT_EQ(powder.document["products"][0]["cls"], "lightener");
  EXPECT_EQ(powder.document["products"][0]["code"], "P1");
}

TEST(ShelfTable, ChangesWhatIsThereAndLosesNothing) {
  Json document = read("code;name\nK7;7 copper\nK8;8 ash").document;
  document["products"][0]["barcode"] = "123";
  document["products"][0]["declared"] = *parse(R"([{"cas": "108-46-3", "percent": 1.1}])");
  const TableRead again = read("code;name;price;package\nK7;7 copper;6;60\nK8;8 ash;;\nK9;9 ash;;", "tint", document);
  EXPECT_EQ(again.lines[1].is, TableLineIs::changed);
  EXPECT_EQ(again.lines[2].is, TableLineIs::same);
  EXPECT_EQ(again.lines[3].is, TableLineIs::added);
  const Json& first = again.document["products"][0];
  EXPECT_EQ(first["barcode"], "123");
  EXPECT_TRUE(first.contains("declared"));
  EXPECT_EQ(first["price_per_g"], 0.1);
  EXPECT_EQ(again.document["products"].size(), 3u);
}

TEST(ShelfTable, WhatIsPrintedIsReadBackAsTheSame) {
  Json document = read(
                      "code;name;price;package;stock;density;barcode\n"
                      "=K7;7 copper;9,5;60;0;1,02;0012\n\"K;8\";8 \"soft\" ash;;;;;\n;clear;;;;;\n;blue;7;55;;;")
                      .document;
  const std::string csv = print_table(document, "tint");
  const TableRead same = read(csv, "tint", document);
  for (std::size_t i = 1; i < same.lines.size(); ++i) EXPECT_EQ(same.lines[i].is, TableLineIs::same) << csv;
  EXPECT_EQ(same.document, document);
  EXPECT_EQ(print_table(read(csv).document, "tint"), csv);  // on an empty shelf too
}

TEST(ShelfTable, ALevelBesideTheToneIsRead) {
  const TableRead got = read("code;tone\nK8;8 Asch");
  EXPECT_EQ(got.document["products"][0]["level"], 8);
  EXPECT_EQ(got.document["products"][0]["cls"], "permanent");
  EXPECT_EQ(read(print_table(got.document, "tint"), "tint", got.document).document, got.document);
}

TEST(ShelfTable, SixtyShadesInOneGo) {
  std::string text;
  int n = 0;
  for (int level = 1; level <= 10; ++level)
    for (const char* tone : {"natural", "ash", "gold", "copper", "red", "violet"})
      text += "N" + std::to_string(++n) + "\t" + std::to_string(level) + "\t" + tone + "\t60 g\n";
  const TableRead got = read(text);
  EXPECT_EQ(got.document["products"].size(), 60u);
  const auto document = read_shelf_document(got.document);
  ASSERT_TRUE(document);
  EXPECT_TRUE(check_shelf(*document).empty());
  EXPECT_EQ(shelf_of(*document).products[3].name, "N4 · 1 copper");
}

TEST(ShelfTable, TellsWhatTheWholeLacks) {
  EXPECT_EQ(read_table({"x", "none", {}, {}}, shelf()).error()[0].code, "unknown_range");
  EXPECT_EQ(read_table({std::string(kTableBytes + 1, 'x'), "tint", {}, {}}, shelf()).error()[0].code,
            "document_too_large");
  const auto latin = read_table({"7 nat\xFCrlich", "tint", {}, {}}, shelf());
  ASSERT_FALSE(latin);
  EXPECT_EQ(latin.error()[0].code, "invalid_utf8");
  EXPECT_EQ(answer_table(*parse(R"({"text": 1, "rnge": "tint"})")).error().size(), 3u);
}

TEST(ShelfDocument, KeepsUnknownUnknown) {
  const auto got = read_shelf_document(*parse(
      R"({"ranges": [{"id": "t", "name": "tint", "cls": "permanent", "developer_percents": [6]}],
          "products": [{"id": "a", "range": "t", "cls": "permanent", "level": 7, "stock_g": 0},
                       {"id": "b", "range": "t", "cls": "permanent", "level": 8, "code": "B"}]})"));
  ASSERT_TRUE(got);
  const Shelf shelf = shelf_of(*got);
  EXPECT_EQ(shelf.products[0].stock_g, 0);
  EXPECT_EQ(shelf.products[1].stock_g, kNotCounted);
  EXPECT_EQ(shelf.products[1].name, "B");
  const Problems lacks = gaps(*got);
  ASSERT_EQ(lacks.size(), 1u);
  EXPECT_EQ(lacks[0].code, "no_developer_for");
  EXPECT_EQ(lacks[0].path, "/ranges/0");
}

TEST(ShelfDocument, TellsEveryProblemWithItsPlaceInTheFile) {
  const auto got = read_shelf_document(*parse(
      R"({"ranges": [{"id": "t", "cls": "permanent", "ratios": [11]}], "products": [
          {"id": "a", "range": "u", "cls": "permanent", "level": 7}, {"id": "a", "range": "t", "cls": "permanent"}]})"));
  ASSERT_TRUE(got);
  std::vector<std::string> places;
  for (const Problem& p : check_shelf(*got)) places.push_back(p.path);
  EXPECT_EQ(places, (std::vector<std::string>{"/products/1/id", "/ranges/0/ratios/0", "/products/0/range",
                                              "/products/1/level"}));
}

TEST(ShelfDocument, TheClassesAreARightShelfOfNoMaker) {
  std::ifstream in(STRANDLINE_SOURCE_DIR "/knowledge/shelf/classes.json");
  const auto got = parse(std::string(std::istreambuf_iterator<char>(in), {})).and_then(read_shelf_document);
  ASSERT_TRUE(got);
  EXPECT_TRUE(check_shelf(*got).empty());
  for (const Problem& p : gaps(*got)) EXPECT_EQ(p.code, "range_is_empty") << p.path;
  for (const Range& range : got->ranges) EXPECT_TRUE(range.maker.empty());
}

}  // namespace
}  // namespace strandline::wire
