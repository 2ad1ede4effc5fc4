#pragma once
// The surface of one fibre: a smooth dielectric whose facets are tilted against the cylinder (cuticle,
// roughness).
#include "random.h"
#include "vector3.h"

namespace strandline::fibre_bed {

// Share of unpolarised light reflected at a smooth dielectric. `cosine` in [0, 1] on the side the light comes
// from; `eta` = index there / index beyond, > 0. 1 under total reflection. Fresnel's equations.
double fresnel(double cosine, double eta);

struct SurfaceSpec {
  double index = 1.55;           // of the fibre against air; keratin: Wortmann et al. 2003
  double tilt_mean = 0;          // slope of the facets along the fibre, rad; + leans the outward normal towards +x
  double tilt_sd = 0.08;         // its spread along the fibre, rad
  double tilt_sd_around = 0.08;  // spread around the fibre, rad
};

struct Crossing {
  Vector3 direction;  // unit
  bool inside;        // in the fibre afterwards
};

// Light of unit `direction` meets the surface with outward unit normal `normal` (no x part), from inside or
// outside. Facets are drawn by the area they show to the light, so the surface is reciprocal up to the square
// of the tilt; light that a facet sends back towards the surface meets another facet.
Crossing cross(const SurfaceSpec& surface, Vector3 direction, Vector3 normal, bool inside, Random& random);

}  // namespace strandline::fibre_bed
