// Small documents a user could write, good and bad.
#include "strandline/cgats.h"

#include <gtest/gtest.h>

namespace strandline::cgats {
namespace {

constexpr const char* kPlain =
    "CGATS.17\n"
    "ORIGINATOR \"a spectrophotometer\"   # who measured\n"
    "CREATED Sun Sep 04 06:04:18 2022\n"
    "KEYWORD \"MY_KEY\"\n"
    "\"MY_KEY\" \"says \"\"hello\"\"\"\n"
    "NUMBER_OF_FIELDS 4\n"
    "BEGIN_DATA_FORMAT\n"
    "SAMPLE_ID LAB_L LAB_A LAB_B\n"
    "END_DATA_FORMAT\n"
    "NUMBER_OF_SETS 2\n"
    "BEGIN_DATA\n"
    "\"light brown\" 40.25 6.5 12\n"
    "2 21,5 3,25 -4e-1\n"
    "END_DATA\n";

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != text.npos; at += to.size()) text.replace(at, from.size(), to);
  return text;
}

// The code of the only problem and the line it names.
std::string refusal(std::string_view text, const Limits& limits = {}) {
  const auto doc = read(text, limits);
  if (doc) return "read";
  std::string all;
  for (const auto& p : doc.error()) {
    EXPECT_EQ(p.path, "/lines/" + p.params.at("line"));
    all += (all.empty() ? "" : ", ") + p.code + " " + p.params.at("line");
  }
  return all;
}

TEST(Cgats, ReadsAPlainFile) {
  const auto doc = read(kPlain);
  ASSERT_TRUE(doc);
  ASSERT_EQ(doc->tables.size(), 1u);
  const Table& t = doc->tables[0];
  EXPECT_EQ(t.identifier, "CGATS.17");
  EXPECT_EQ(t.value("originator"), "a spectrophotometer");
  EXPECT_EQ(t.value("CREATED"), "Sun Sep 04 06:04:18 2022");
  EXPECT_EQ(t.value("MY_KEY"), "says \"hello\"");
  EXPECT_FALSE(t.value("KEYWORD"));
  EXPECT_EQ(t.fields.size(), 4u);
  EXPECT_EQ(t.field("lab_l"), 1);
  EXPECT_FALSE(t.field("XYZ_X"));
  ASSERT_EQ(t.rows.size(), 2u);
  EXPECT_EQ(t.rows[0].cells[0], "light brown");
  EXPECT_EQ(t.rows[1].line, 13);
  EXPECT_EQ(t.line, 11);
  const auto first = lab(t, 0), second = lab(t, 1);
  ASSERT_TRUE(first && second);
  EXPECT_EQ(first->l, 40.25);
  EXPECT_EQ(second->l, 21.5);
  EXPECT_EQ(second->b, -0.4);
}

TEST(Cgats, LineEndingsTabsAndByteOrderMarkDoNotMatter) {
  const std::string text = kPlain;
  for (const auto& other :
       {replaced(text, "\n", "\r\n"), replaced(text, "\n", "\r"), "\xEF\xBB\xBF" + text,
        replaced(text, " LAB", "\tLAB"), replaced(text, "\n", " \t\n\n"), text.substr(0, text.size() - 1)}) {
    const auto doc = read(other);
    ASSERT_TRUE(doc) << other;
    EXPECT_EQ(doc->tables[0].rows[1].cells[1], "21,5");
    EXPECT_EQ(doc->tables[0].fields.size(), 4u);
  }
}

TEST(Cgats, RowsMayRunOverLinesAndSeveralMayShareOne) {
  const std::string head = "X\nBEGIN_DATA_FORMAT A B\nC D END_DATA_FORMAT\nBEGIN_DATA\n";
  const auto wrapped = read(head + "1 2\n3 4\n5 6 7\n8\nEND_DATA\n"),
             together = read(head + "1 2 3 4 5 6 7 8 END_DATA");
  ASSERT_TRUE(wrapped && together);
  for (const auto* doc : {&*wrapped, &*together}) {
    ASSERT_EQ(doc->tables[0].rows.size(), 2u);
    EXPECT_EQ(doc->tables[0].rows[1].cells, (std::vector<std::string>{"5", "6", "7", "8"}));
  }
  EXPECT_EQ(wrapped->tables[0].rows[1].line, 7);
}

TEST(Cgats, TabsKeepEmptyCellsAndNamesWithBlanks) {
  const auto doc = read(
      "X\nBEGIN_DATA_FORMAT\nID\tA\tB\nEND_DATA_FORMAT\nBEGIN_DATA\ntoo "
      "dark\t1\t2\nx\t\t3\ny\t4\t\nEND_DATA\n");
  ASSERT_TRUE(doc);
  EXPECT_EQ(doc->tables[0].rows[0].cells[0], "too dark");
  EXPECT_EQ(doc->tables[0].rows[1].cells[1], "");
  EXPECT_EQ(doc->tables[0].rows[1].cells[2], "3");
  EXPECT_EQ(doc->tables[0].rows[2].cells[2], "");
}

TEST(Cgats, SeveralTables) {
  std::string text = kPlain;
  text +=
      "CTI1\nBEGIN_DATA_FORMAT\nRGB_R\nEND_DATA_FORMAT\nBEGIN_DATA\n1\n2\nEND_DATA\n"
      "DESCRIPTOR \"the same columns again\"\nBEGIN_DATA\n3\nEND_DATA\n";
  const auto doc = read(text);
  ASSERT_TRUE(doc);
  ASSERT_EQ(doc->tables.size(), 3u);
  EXPECT_EQ(doc->tables[1].identifier, "CTI1");
  EXPECT_EQ(doc->tables[1].rows.size(), 2u);
  EXPECT_EQ(doc->tables[2].fields, doc->tables[1].fields);
  EXPECT_EQ(doc->tables[2].rows[0].cells[0], "3");
}

TEST(Cgats, RefusesFilesThatContradictThemselves) {
  const std::string text = kPlain;
  EXPECT_EQ(refusal(""), "cgats_no_table 0");
  EXPECT_EQ(refusal("just some words\nand more\n"), "cgats_no_table 2");
  EXPECT_EQ(refusal(replaced(text, "SETS 2", "SETS 3")), "cgats_count 14");
  EXPECT_EQ(refusal(replaced(text, "LAB_A", "LAB_L")), "cgats_field_twice 9");
  EXPECT_EQ(refusal(replaced(text, "END_DATA\n", "")), "cgats_data_open 13");
  EXPECT_EQ(refusal(replaced(text, "END_DATA_FORMAT\n", "")), "cgats_format_open 10");
  EXPECT_EQ(refusal(replaced(text, "BEGIN_DATA_FORMAT", "BEGIN_NOTHING")), "cgats_stray_end 9, cgats_no_fields 11");
  EXPECT_EQ(refusal(replaced(text, "\"light brown\"", "\"light brown")), "cgats_quote_open 12");
  EXPECT_EQ(refusal(text + std::string("\0", 1)), "cgats_not_text 15");
}

// Files in use carry a wrong NUMBER_OF_FIELDS beside a right format.
TEST(Cgats, NotesAWrongNumberOfFields) {
  EXPECT_TRUE(read(kPlain)->notes.empty());
  const auto doc = read(replaced(kPlain, "FIELDS 4", "FIELDS 5"));
  ASSERT_TRUE(doc);
  ASSERT_EQ(doc->notes.size(), 1u);
  EXPECT_EQ(doc->notes[0].code, "cgats_count");
  EXPECT_EQ(doc->notes[0].params.at("field"), "NUMBER_OF_FIELDS");
  EXPECT_EQ(doc->notes[0].params.at("expected"), "5");
  EXPECT_EQ(doc->notes[0].params.at("got"), "4");
}

TEST(Cgats, NamesTheRowThatIsBroken) {
  const std::string text = kPlain;
  EXPECT_EQ(refusal(replaced(text, " 40.25", "")), "cgats_row_length 12");
  EXPECT_EQ(refusal(replaced(text, " 40.25", " 40.25 7")), "cgats_row_length 12");
  EXPECT_EQ(refusal(replaced(text, " -4e-1", "")), "cgats_row_length 13");
  const auto doc = read(replaced(text, " 40.25", ""));
  EXPECT_EQ(doc.error()[0].params.at("expected"), "4");
  EXPECT_EQ(doc.error()[0].params.at("got"), "3");
}

TEST(Cgats, KeepsItsLimits) {
  const std::string text = kPlain;
  EXPECT_EQ(refusal(text, {.bytes = text.size() - 1}), "cgats_too_large 0");
  EXPECT_EQ(refusal(text, {.bytes = text.size()}), "read");
  EXPECT_EQ(refusal(text, {.fields = 3}), "cgats_too_many_keywords 6");
  EXPECT_EQ(refusal(text.substr(text.find("BEGIN")), {.fields = 3}), "cgats_too_many_fields 2");
  EXPECT_EQ(refusal(text, {.rows = 1}), "cgats_too_many_rows 13");
  EXPECT_EQ(refusal(text + text, {.tables = 1}), "cgats_too_many_tables 28");
  std::string many = "X\nBEGIN_DATA_FORMAT A B END_DATA_FORMAT\nBEGIN_DATA\n";
  for (int i = 0; i < 1000; ++i) many += "1 2 3\n";
  EXPECT_EQ(read(many).error().size(), 20u);
}

TEST(Cgats, NumbersWithPointOrComma) {
  EXPECT_EQ(number("12.5"), 12.5);
  EXPECT_EQ(number("12,5"), 12.5);
  EXPECT_EQ(number("+1,5e-3"), 0.0015);
  EXPECT_EQ(number("-0"), 0);
  for (const char* bad :
       {"", "+", "-", "++1", "+-1e", "1.2,3", "1,2,3", "nan", "inf", "-inf", "1e999", "0x10", "1 2", "5%", "L"})
    EXPECT_FALSE(number(bad)) << bad;
}

}  // namespace
}  // namespace strandline::cgats
