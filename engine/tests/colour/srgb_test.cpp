// Screen colours.
#include <gtest/gtest.h>
#include <lcms2.h>

#include <cmath>

#include "strandline/colour.h"

namespace strandline {
namespace {

constexpr Xyz kD65 = {100 * 0.3127 / 0.3290, 100, 100 * (1 - 0.3127 - 0.3290) / 0.3290};

double decoded(double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); }

TEST(Srgb, WhiteOfEveryLightIsScreenWhite) {
  for (Light l : kLights) {
    const Xyz white = weights(l, Observer::cie_1964_10deg).white;
    const Srgb s = srgb(white, white);
    EXPECT_NEAR(s.r, 1, 1e-9);
    EXPECT_NEAR(s.g, 1, 1e-9);
    EXPECT_NEAR(s.b, 1, 1e-9);
    EXPECT_TRUE(s.in_gamut);
    EXPECT_EQ(srgb({0, 0, 0}, white).g, 0);
  }
}

// IEC 61966-2-1: red, green and blue of the screen in XYZ, four decimals of Y = 1.
TEST(Srgb, PrimariesOfTheStandard) {
  const Srgb red = srgb({41.24, 21.26, 1.93}, kD65), green = srgb({35.76, 71.52, 11.92}, kD65);
  EXPECT_NEAR(red.r, 1, 1e-3);
  EXPECT_NEAR(decoded(red.g), 0, 1e-3);
  EXPECT_NEAR(decoded(red.b), 0, 1e-3);
  EXPECT_NEAR(green.g, 1, 1e-3);
  EXPECT_NEAR(decoded(green.r), 0, 1e-3);
  EXPECT_NEAR(decoded(green.b), 0, 1e-3);
}

// Little CMS from CIELAB at its D50 white to its own sRGB, Bradford on both sides.
TEST(Srgb, AgreesWithLittleCms) {
  const Xyz d50{96.42, 100, 82.49};
  cmsHPROFILE from = cmsCreateLab4Profile(nullptr), to = cmsCreate_sRGBProfile();
  cmsHTRANSFORM t =
      cmsCreateTransform(from, TYPE_Lab_DBL, to, TYPE_RGB_DBL, INTENT_RELATIVE_COLORIMETRIC, cmsFLAGS_NOOPTIMIZE);
  int compared = 0;
  for (double l = 10; l <= 90; l += 10)
    for (double a = -10; a <= 40; a += 10)
      for (double b = -20; b <= 50; b += 10) {
        const Srgb ours = srgb(xyz(Lab{l, a, b}, d50), d50);
        if (!ours.in_gamut) continue;
        const cmsCIELab in{l, a, b};
        double theirs[3];
        cmsDoTransform(t, &in, theirs, 1);
        EXPECT_NEAR(ours.r, theirs[0], 1.5e-3);
        EXPECT_NEAR(ours.g, theirs[1], 1.5e-3);
        EXPECT_NEAR(ours.b, theirs[2], 1.5e-3);
        ++compared;
      }
  cmsDeleteTransform(t), cmsCloseProfile(from), cmsCloseProfile(to);
  EXPECT_GT(compared, 200);
}

// Outside the screen's range only chroma gives way.
TEST(Srgb, ClippingKeepsHueAndLightness) {
  const Lab wild = lab(Lch{45, 110, 55});
  const Srgb s = srgb(xyz(wild, kD65), kD65);
  EXPECT_FALSE(s.in_gamut);
  const double r = decoded(s.r), g = decoded(s.g),
               b = decoded(s.b);  // back through the inverse of the standard
  const Xyz shown{41.239 * r + 35.758 * g + 18.048 * b, 21.264 * r + 71.517 * g + 7.219 * b,
                  1.933 * r + 11.919 * g + 95.053 * b};
  const Lch seen = lch(lab(shown, kD65));
  EXPECT_NEAR(seen.l, 45, 0.05);
  EXPECT_NEAR(seen.h, 55, 0.2);
  EXPECT_GT(seen.c, 40);
  EXPECT_LT(seen.c, 110);
  const Srgb over = srgb({190, 200, 217}, kD65);
  EXPECT_FALSE(over.in_gamut);
  EXPECT_NEAR(over.g, 1, 1e-6);
}

}  // namespace
}  // namespace strandline
