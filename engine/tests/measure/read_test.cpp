#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

#include "strandline/cgats.h"
#include "strandline/measured.h"

namespace strandline::measured {
namespace {

std::string contents(const std::string& name) {
  std::ifstream in(std::string(STRANDLINE_SOURCE_DIR) + "/engine/tests/measure/files/" + name, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

// Ten invented strands, written and turned into L*a*b* (D65, 10°) by a general-purpose colour tool: one file has its
// spectra, the other its own L*a*b* of them.
TEST(Measured, GivesTheLabOfAGeneralPurposeTool) {
  const auto file = read(contents("strands_spectra.ti3"));
  ASSERT_TRUE(file) << file.error()[0].code;
  ASSERT_EQ(file->samples.size(), 10u);
  EXPECT_EQ(file->samples[0].name, "white strand");
  const auto theirs = cgats::read(contents("strands_lab.ti3"));
  ASSERT_TRUE(theirs);
  const cgats::Table& t = theirs->tables[0];
  const int l = *t.field("D65LAB_L"), a = *t.field("D65LAB_A"), b = *t.field("D65LAB_B");
  for (size_t i = 0; i < file->samples.size(); ++i) {
    const auto at = [&](int column) { return *cgats::number(t.rows[i].cells[static_cast<size_t>(column)]); };
    const Lab& ours = file->samples[i].lab;
    EXPECT_NEAR(ours.l, at(l), 0.01) << file->samples[i].name;
    EXPECT_NEAR(ours.a, at(a), 0.01) << file->samples[i].name;
    EXPECT_NEAR(ours.b, at(b), 0.01) << file->samples[i].name;
  }
}

// Without spectra the file's own numbers are taken, and for which light they are is said.
TEST(Measured, SaysForWhichLightLabAloneIs) {
  const auto file = read(contents("strands_lab.ti3"));
  ASSERT_TRUE(file) << file.error()[0].code;
  EXPECT_NEAR(file->samples[2].lab.l, 56.0613, 1e-9);
  ASSERT_FALSE(file->notes.empty());
  EXPECT_EQ(file->notes.back().code, "measured_other_light");
}

TEST(Measured, ReadsTablesOfSpectraWithCommasForPoints) {
  std::string text = "# invented\nshade;";
  for (int nm = 400; nm <= 700; nm += 10) text += std::to_string(nm) + (nm < 700 ? ";" : "\n");
  text += "7 copper;";
  for (int nm = 400; nm <= 700; nm += 10) text += std::string("18,5") + (nm < 700 ? ";" : "\n");
  const auto file = read(text);
  ASSERT_TRUE(file) << file.error()[0].code;
  ASSERT_EQ(file->samples.size(), 1u);
  EXPECT_EQ(file->samples[0].name, "7 copper");
  EXPECT_EQ(file->samples[0].line, 3);
  EXPECT_NEAR((*file->samples[0].reflectance)[15], 0.185, 1e-12);
  EXPECT_NEAR(file->samples[0].lab.a, 0, 0.05);
}

TEST(Measured, ReadsTablesOfLab) {
  const auto file = read("name\tL*\ta*\tb*\n6 natural\t38,2\t5.1\t9\n");
  ASSERT_TRUE(file) << file.error()[0].code;
  EXPECT_EQ(file->samples[0].name, "6 natural");
  EXPECT_NEAR(file->samples[0].lab.l, 38.2, 1e-12);
}

struct Bad {
  const char *text, *code;
};

TEST(Measured, SaysWhatIsWrongAndWhere) {
  for (const Bad& bad :
       {Bad{"", "table_no_heading"}, Bad{"one word\n", "table_no_heading"},
        Bad{"name,L*,a*,b*\nx,50,1\n", "table_row_length"}, Bad{"name,price\nx,50\n", "measured_nothing"},
        Bad{"name,L*,a*,b*\nx,150,1,1\n", "measured_impossible"}, Bad{"name,L*,a*,b*\nx,word,1,1\n", "lab_number"},
        Bad{"BEGIN_DATA_FORMAT\nLAB_L\n", "cgats_format_open"}}) {
    const auto file = read(bad.text);
    ASSERT_FALSE(file) << bad.text;
    EXPECT_EQ(file.error()[0].code, bad.code) << bad.text;
  }
}

TEST(Measured, TakesLabTyped) {
  for (const char* text : {"54.2 8.1 19.6", "54,2; 8,1; 19,6", " 54.2\t8.1\t19.6 ", "54.2 / 8.1 / 19.6"}) {
    const auto lab = typed(text);
    ASSERT_TRUE(lab) << text;
    EXPECT_NEAR(lab->l, 54.2, 1e-12);
    EXPECT_NEAR(lab->b, 19.6, 1e-12);
  }
  for (const char* text : {"", "54", "54 8", "54 8 x", "1 2 3 4"}) EXPECT_EQ(typed(text).error()[0].code, "lab_typed");
  EXPECT_EQ(typed("101 0 0").error()[0].code, "measured_impossible");
}

}  // namespace
}  // namespace strandline::measured
