#include "spectra.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <fstream>

#include "strandline/optics.h"

namespace strandline::calibrate {
namespace {

// A spectrum that the model made itself is found again.
TEST(Spectra, FindsItsOwnHair) {
  const Constants c;
  Fibre f;
  f.eumelanin = 0.5, f.pheomelanin = 0.2;
  MeasuredSpectrum m{"made", reflectance(optical_depth(f, pigments(c)))};
  const double own = reflectance(tau_at_floor), floor = 0.015;
  for (double& r : m.reflectance) r = floor + (r - own) * (1 - floor) / (1 - own);
  const SpectrumFit fit = fit_spectrum(m, c);
  EXPECT_LT(fit.delta_e, 0.05);
  EXPECT_NEAR(fit.eumelanin, 0.5, 0.02);
  EXPECT_NEAR(fit.pheomelanin, 0.2, 0.03);
  EXPECT_NEAR(fit.floor, floor, 5e-4);
}

class File {
 public:
  explicit File(const std::string& text) { std::ofstream(path) << text; }
  ~File() { std::remove(path.c_str()); }
  const std::string path = testing::TempDir() + "strandline_spectra_test.csv";
};

TEST(Spectra, ReadsATable) {
  std::string text = "nm,one,two\n";
  for (int nm = 390; nm <= 710; nm += 10) text += std::to_string(nm) + ",0.1,0.2\n";
  const File file(text);
  const auto all = read_spectra(file.path);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[1].name, "two");
  EXPECT_NEAR(all[1].reflectance[15], 0.2, 1e-12);
}

TEST(Spectra, SaysWhichLineIsWrong) {
  const File file("nm,one\n400,0.1\n410,black\n");
  try {
    read_spectra(file.path);
    FAIL();
  } catch (const std::runtime_error& e) {
    EXPECT_NE(std::string(e.what()).find("line 3"), std::string::npos) << e.what();
  }
  EXPECT_THROW(read_spectra("no_such_file.csv"), std::runtime_error);
}

}  // namespace
}  // namespace strandline::calibrate
