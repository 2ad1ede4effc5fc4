#include "surface.h"

#include <algorithm>

namespace strandline::fibre_bed {

double fresnel(double cosine, double eta) {
  const double sine2 = eta * eta * (1 - cosine * cosine);
  if (sine2 >= 1) return 1;
  const double beyond = std::sqrt(1 - sine2);
  const double s = (eta * cosine - beyond) / (eta * cosine + beyond);
  const double p = (cosine - eta * beyond) / (cosine + eta * beyond);
  return 0.5 * (s * s + p * p);
}

namespace {

// A facet normal on the side of `outward`, drawn with weight max(0, -direction . facet) / (outward . facet):
// the area of the facet as the light sees it. `lean` is +1 outside and -1 inside, where the same slopes show
// from below.
Vector3 draw_facet(const SurfaceSpec& s, Vector3 direction, Vector3 outward, double lean, Random& random) {
  if (s.tilt_sd == 0 && s.tilt_sd_around == 0 && s.tilt_mean == 0) return outward;
  const Vector3 around{0, -outward.z, outward.y};
  const double cosine = -dot(direction, outward), along = -direction.x, across = -dot(direction, around);
  const double most = std::max(cosine, 0.0) + std::abs(along) * (std::abs(s.tilt_mean) + 4 * s.tilt_sd) +
                      std::abs(across) * 4 * s.tilt_sd_around;
  while (true) {
    const double slope = lean * (s.tilt_mean + s.tilt_sd * random.normal());
    const double slope_around = s.tilt_sd_around == 0 ? 0 : s.tilt_sd_around * random.normal();
    const double shown = cosine + slope * along + slope_around * across;
    if (random.uniform() * most < shown)
      return normalized({slope, outward.y + slope_around * around.y, outward.z + slope_around * around.z});
  }
}

}  // namespace

Crossing cross(const SurfaceSpec& surface, Vector3 direction, Vector3 normal, bool inside, Random& random) {
  // As long as the light heads for the surface it meets a facet; grazing light may meet several.
  while (dot(direction, normal) * (inside ? 1 : -1) > 0) {
    const Vector3 outward = inside ? -normal : normal;  // towards the light
    const Vector3 facet = draw_facet(surface, direction, outward, inside ? -1 : 1, random);
    const double cosine = std::min(1.0, -dot(direction, facet));
    const double eta = inside ? surface.index : 1 / surface.index;
    if (random.uniform() < fresnel(cosine, eta)) {
      direction = normalized(direction + 2 * cosine * facet);
    } else {
      const double beyond = std::sqrt(1 - eta * eta * (1 - cosine * cosine));
      direction = normalized(eta * direction + (eta * cosine - beyond) * facet);
      inside = !inside;
    }
  }
  return {direction, inside};
}

}  // namespace strandline::fibre_bed
