// Real files: everything of this format that Debian's colord-data and argyll-ref install.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "strandline/cgats.h"

namespace strandline::cgats {
namespace {

namespace fs = std::filesystem;
const fs::path kColord = "/usr/share/colord", kArgyll = "/usr/share/color/argyll/ref";

std::string contents(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

// Reads every file of the folder that has one of the format's endings; how many there were.
int read_all(const fs::path& folder) {
  const std::set<std::string> endings{".sp", ".cmf", ".cie", ".ti1", ".ti2", ".ti3", ".cal", ".gam"};
  int files = 0;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (!endings.contains(entry.path().extension())) continue;
    ++files;
    const auto doc = read(contents(entry.path()));
    EXPECT_TRUE(doc) << entry.path() << ": "
                     << (doc ? "" : doc.error()[0].code + " line " + doc.error()[0].params.at("line"));
    if (!doc) continue;
    for (const auto& table : doc->tables) EXPECT_FALSE(table.fields.empty()) << entry.path();
    if (entry.path().extension() != ".sp") continue;
    for (std::size_t i = 0; i < doc->tables[0].rows.size(); ++i)
      EXPECT_TRUE(spectrum(doc->tables[0], static_cast<int>(i))) << entry.path() << " row " << i;
  }
  return files;
}

TEST(CgatsFiles, EveryFileOfColordData) {
  if (!fs::exists(kColord)) GTEST_SKIP() << "package colord-data is not installed";
  EXPECT_GE(read_all(kColord), 28);
}

TEST(CgatsFiles, EveryFileOfArgyllRef) {
  if (!fs::exists(kArgyll)) GTEST_SKIP() << "package argyll-ref is not installed";
  EXPECT_GE(read_all(kArgyll), 40);
}

// The test colours of colour rendering, CIE 13.3: TCS01 is "light greyish red", Munsell 7.5 R 6/4, whose
// CIELAB under illuminant C is near 61 / 17 / 11; under D65 it moves little.
TEST(CgatsFiles, ATestColourHasItsColour) {
  if (!fs::exists(kColord)) GTEST_SKIP() << "package colord-data is not installed";
  const auto doc = read(contents(kColord / "ref/CIE-TCS.sp"));
  ASSERT_TRUE(doc);
  const Table& t = doc->tables.at(0);
  EXPECT_EQ(t.rows.at(0).cells.at(0), "TCS01");
  const auto s = spectrum(t, 0);
  ASSERT_TRUE(s);
  EXPECT_DOUBLE_EQ((*s)[0], 0.26);
  const Lab c = strandline::lab(*s, weights(Light::daylight, Observer::cie_1931_2deg));
  EXPECT_NEAR(c.l, 61, 2);
  EXPECT_NEAR(c.a, 16, 4);
  EXPECT_NEAR(c.b, 11, 4);
}

TEST(CgatsFiles, SeveralTablesInOneFile) {
  if (!fs::exists(kArgyll)) GTEST_SKIP() << "package argyll-ref is not installed";
  const auto doc = read(contents(kArgyll / "FograStrip2.ti1"));
  ASSERT_TRUE(doc);
  EXPECT_EQ(doc->tables.size(), 3u);
}

}  // namespace
}  // namespace strandline::cgats
