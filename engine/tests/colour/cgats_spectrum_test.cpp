// Rows of measurement files as spectra and CIELAB.
#include <gtest/gtest.h>

#include <functional>

#include "strandline/cgats.h"

namespace strandline::cgats {
namespace {

double curve(double nm) { return 0.1 + 0.5 * (nm - 400) / 300; }

// One table with a column per wavelength, named by `name`, of values `scale` times the curve.
std::string text(int first, int last, int step, const std::function<std::string(int)>& name, double scale,
                 const std::string& keywords = "") {
  std::string names = "SAMPLE_ID", values = "s1";
  for (int nm = first; nm <= last; nm += step) {
    names += " " + name(nm);
    values += " " + std::to_string(scale * curve(nm));
  }
  return "CGATS.17\n" + keywords + "BEGIN_DATA_FORMAT\n" + names + "\nEND_DATA_FORMAT\nBEGIN_DATA\n" + values +
         "\nEND_DATA\n";
}

Result<Spectrum> first_row(const std::string& t) {
  const auto doc = read(t);
  EXPECT_TRUE(doc) << t;
  return spectrum(doc->tables.at(0), 0);
}

void expect_curve(const std::string& t) {
  const auto s = first_row(t);
  ASSERT_TRUE(s) << t << (s ? "" : s.error()[0].code);
  for (int k = 0; k < kBands; ++k) EXPECT_NEAR((*s)[k], curve(band_nm(k)), 2e-6) << t;
}

TEST(CgatsSpectrum, WavelengthsInTheirManySpellings) {
  for (const char* prefix : {"SPEC_", "spec_", "SPECTRAL_NM", "SPECTRAL_NM_", "SPECTRAL_", "nm", "NM_", "R_", "R", ""})
    expect_curve(text(380, 730, 10, [&](int nm) { return prefix + std::to_string(nm); }, 1));
  expect_curve(text(380, 730, 10, [](int nm) { return std::to_string(nm) + "nm"; }, 1));
  expect_curve(text(380, 730, 10, [](int nm) { return "SPEC_" + std::to_string(nm) + ".00"; }, 1));
}

TEST(CgatsSpectrum, ScaledNamesUseTheKeywords) {
  const auto thousand = [](int nm) { return "SPEC_" + std::to_string(nm * 1000); };
  const std::string keys = "SPECTRAL_BANDS \"36\"\nSPECTRAL_START_NM \"380.000000\"\nSPECTRAL_END_NM \"730,0\"\n";
  expect_curve(text(380, 730, 10, thousand, 1, keys));
  expect_curve(text(380, 730, 10, thousand, 1));  // without them the power of ten is plain
  EXPECT_FALSE(first_row(text(380, 740, 10, thousand, 1, keys)));
  // Numbers that are no wavelengths at any scale.
  EXPECT_EQ(first_row(text(
                          380, 730, 10, [](int nm) { return "SPEC_" + std::to_string(nm - 379); }, 1))
                .error()[0]
                .code,
            "spectrum_wavelengths");
}

TEST(CgatsSpectrum, NormPercentAndFraction) {
  const auto name = [](int nm) { return "SPEC_" + std::to_string(nm); };
  expect_curve(text(400, 700, 10, name, 1));
  expect_curve(text(400, 700, 10, name, 100));
  expect_curve(text(400, 700, 10, name, 2.5, "SPECTRAL_NORM \"2.5\"\n"));
  expect_curve(text(400, 700, 10, name, 1, "SPECTRAL_NORM 1\n"));
  EXPECT_EQ(first_row(text(400, 700, 10, name, 1, "SPECTRAL_NORM 0\n")).error()[0].code, "spectrum_norm");
}

TEST(CgatsSpectrum, FineAndCoarseGrids) {
  const auto name = [](int nm) { return "SPEC_" + std::to_string(nm); };
  expect_curve(text(360, 740, 5, name, 1));
  expect_curve(text(390, 710, 1, name, 1));
  expect_curve(text(400, 700, 20, name, 1));
  const auto narrow = first_row(text(420, 700, 10, name, 1));
  ASSERT_FALSE(narrow);
  EXPECT_EQ(narrow.error()[0].code, "spectrum_range");
}

// The form printed in the standard: each value beside its wavelength.
TEST(CgatsSpectrum, WavelengthsAsCells) {
  std::string names, values;
  for (int nm = 700; nm >= 400; nm -= 10) {  // falling order is allowed
    names += "SPECTRAL_NM SPECTRAL_PCT ";
    values += std::to_string(nm) + " " + std::to_string(100 * curve(nm)) + " ";
  }
  expect_curve("CGATS.17\nBEGIN_DATA_FORMAT\n" + names + "\nEND_DATA_FORMAT\nBEGIN_DATA\n" + values + "\nEND_DATA\n");
}

TEST(CgatsSpectrum, BadCellsAreNamed) {
  const auto doc = read(
      "X\nBEGIN_DATA_FORMAT\nSPEC_400 SPEC_700 LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n1 \xC3\xA4 5 "
      "6 x\nEND_DATA\n");
  ASSERT_TRUE(doc);
  const auto s = spectrum(doc->tables[0], 0);
  ASSERT_FALSE(s);
  EXPECT_EQ(s.error()[0].code, "spectrum_number");
  EXPECT_EQ(s.error()[0].params.at("field"), "SPEC_700");
  EXPECT_EQ(s.error()[0].params.at("got"), "??");
  EXPECT_EQ(s.error()[0].params.at("line"), "6");
  const auto l = lab(doc->tables[0], 0);
  ASSERT_FALSE(l);
  EXPECT_EQ(l.error()[0].code, "lab_number");
  EXPECT_EQ(l.error()[0].params.at("field"), "LAB_B");
  const auto none = read("X\nBEGIN_DATA_FORMAT\nRGB_R RGB_G\nEND_DATA_FORMAT\nBEGIN_DATA\n1 2\nEND_DATA\n");
  EXPECT_EQ(spectrum(none->tables[0], 0).error()[0].code, "spectrum_no_columns");
  EXPECT_EQ(lab(none->tables[0], 0).error()[0].code, "lab_no_columns");
}

}  // namespace
}  // namespace strandline::cgats
