// One fibre's surface: Fresnel's law, Snell's law, tilted facets.
#include "surface.h"

#include <gtest/gtest.h>

namespace strandline::fibre_bed {
namespace {

TEST(Fresnel, NormalIncidenceOnKeratin) {
  // ((1.55 - 1)/(1.55 + 1))^2: 4.65 %, from either side.
  EXPECT_NEAR(fresnel(1, 1 / 1.55), 0.0465, 5e-5);
  EXPECT_NEAR(fresnel(1, 1.55), 0.0465, 5e-5);
}

TEST(Fresnel, AllIsReflectedBeyondTheCriticalAngle) {
  const double critical = std::sqrt(1 - 1 / (1.55 * 1.55));  // its cosine
  EXPECT_EQ(fresnel(critical - 1e-9, 1.55), 1);
  EXPECT_LT(fresnel(critical + 1e-3, 1.55), 1);
  EXPECT_NEAR(fresnel(0, 1 / 1.55), 1, 1e-12);  // grazing
}

TEST(Fresnel, IsTheSameBothWays) {
  for (double cosine : {0.1, 0.3, 0.6, 0.9}) {
    const double beyond = std::sqrt(1 - (1 - cosine * cosine) / (1.55 * 1.55));
    EXPECT_NEAR(fresnel(cosine, 1 / 1.55), fresnel(beyond, 1.55), 1e-12);
  }
}

TEST(Surface, SmoothFacetsObeySnellAndMirror) {
  const SurfaceSpec smooth{.tilt_sd = 0, .tilt_sd_around = 0};
  const Vector3 normal{0, 0, -1}, d = normalized({0.3, 0.4, 0.8});
  Random random(7, 0);
  int reflected = 0;
  for (int i = 0; i < 1000; ++i) {
    const Crossing c = cross(smooth, d, normal, false, random);
    if (c.inside) {
      EXPECT_NEAR(c.direction.x * 1.55, d.x, 1e-12);
      EXPECT_NEAR(c.direction.y * 1.55, d.y, 1e-12);
      EXPECT_NEAR(dot(c.direction, c.direction), 1, 1e-12);
    } else {
      ++reflected;
      EXPECT_NEAR(c.direction.z, -d.z, 1e-12);
      EXPECT_NEAR(c.direction.x, d.x, 1e-12);
    }
  }
  const double expected = 1000 * fresnel(d.z, 1 / 1.55);
  EXPECT_NEAR(reflected, expected, 4 * std::sqrt(expected));
}

TEST(Surface, TiltLeansTheMirrorByTwiceItself) {
  const SurfaceSpec leaning{.tilt_mean = 0.05, .tilt_sd = 0, .tilt_sd_around = 0};
  Random random(7, 1);
  for (int i = 0; i < 500; ++i) {
    const Crossing c = cross(leaning, {0, 0, 1}, {0, 0, -1}, false, random);
    if (!c.inside) {
      EXPECT_NEAR(std::atan2(c.direction.x, -c.direction.z), 2 * std::atan(0.05), 1e-9);
    }
  }
}

TEST(Surface, LightAlwaysLeavesTheSurfaceOnTheSideItSays) {
  const SurfaceSpec rough{.tilt_sd = 0.3, .tilt_sd_around = 0.3};
  Random random(7, 2);
  for (int i = 0; i < 20000; ++i) {
    const double cosine = std::max(1e-4, random.uniform()), sine = std::sqrt(1 - cosine * cosine);
    const bool inside = i % 2;
    const Crossing c = cross(rough, {sine, 0, inside ? -cosine : cosine}, {0, 0, -1}, inside, random);
    ASSERT_GT(c.direction.z * (c.inside ? 1 : -1), 0);
    ASSERT_NEAR(dot(c.direction, c.direction), 1, 1e-9);
  }
}

}  // namespace
}  // namespace strandline::fibre_bed
