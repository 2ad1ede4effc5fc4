// The embedded CIE tables digit for digit against the copies that Debian's colord-data installs.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "generated/tables.h"
#include "strandline/cgats.h"
#include "strandline/illuminant.h"

namespace strandline {
namespace {

namespace fs = std::filesystem;
const fs::path kColord = "/usr/share/colord";

class Tables : public testing::Test {
 protected:
  void SetUp() override {
    if (!fs::exists(kColord)) GTEST_SKIP() << "package colord-data is not installed; nothing to compare with";
  }
};

cgats::Table table_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  auto doc = cgats::read(text.str());
  EXPECT_TRUE(doc) << file;
  return doc ? doc->tables.at(0) : cgats::Table{};
}

// File rows are the curves, table rows the wavelengths; `scale` = file unit over ours.
template <class T>
void same(const fs::path& file, const T& ours, double scale) {
  const auto theirs = table_of(file);
  const std::size_t curves = std::tuple_size_v<typename T::value_type> - 1;
  ASSERT_EQ(theirs.rows.size(), curves) << file;
  ASSERT_EQ(theirs.fields.size(), ours.size()) << file;
  for (std::size_t c = 0; c < curves; ++c)
    for (std::size_t i = 0; i < ours.size(); ++i)
      EXPECT_DOUBLE_EQ(ours[i][c + 1], *cgats::number(theirs.rows[c].cells[i]) * scale)
          << file << ' ' << ours[i][0] << " nm";
}

TEST_F(Tables, Observers) {
  same(kColord / "cmf/CIE1931-2deg-XYZ.cmf", tables::cie_1931_2deg, 1);
  same(kColord / "cmf/CIE1964-10deg-XYZ.cmf", tables::cie_1964_10deg, 1);
}

TEST_F(Tables, DaylightComponents) {
  same(kColord / "ref/CIE-1986-daylight-SPD.cmf", tables::cie_daylight_components, 1);
}

TEST_F(Tables, Fluorescent) { same(kColord / "illuminant/CIE-F11.sp", tables::cie_fl11, 100); }

// Their D65 table is printed to six figures of a hundredth; ours is the formula.
TEST_F(Tables, DaylightFormulaGivesTheD65Table) {
  const auto theirs = table_of(kColord / "illuminant/CIE-D65.sp");
  ASSERT_EQ(theirs.rows.size(), 1u);
  for (int i = 0; i < kPowers; ++i) {
    const auto column = theirs.field("SPEC_" + std::to_string(static_cast<int>(power_nm(i))));
    ASSERT_TRUE(column);
    EXPECT_NEAR(power(Light::daylight)[i], 100 * *cgats::number(theirs.rows[0].cells[*column]), 1e-3) << power_nm(i);
  }
}

}  // namespace
}  // namespace strandline
