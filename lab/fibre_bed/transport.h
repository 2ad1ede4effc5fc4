#pragma once
// One photon's life in a bed of parallel fibres, by geometrical optics. Lengths are in fibre diameters.
//
// Left out: polarisation, interference, the spread of diameters, fibres that cross.
#include <array>
#include <limits>
#include <numbers>
#include <optional>

#include "packing.h"
#include "surface.h"

namespace strandline::fibre_bed {

enum class Top {
  cut,    // the fibres of a random packing that lie wholly below a plane
  flat,   // the packing grew from a row of fibres that touch the plane: combed flat
  loose,  // density rises linearly from 0 to that of the bed over `loose_depth`
};

struct InnerScatter {
  double coefficient = 0;  // scattering events per diameter of path inside the core
  double core = 1;         // core radius / fibre radius: 1 pores everywhere, 0.3 a medulla
  double anisotropy = 0;   // Henyey-Greenstein g in (-1, 1)
  double share = 0;        // which fibres: those whose label lies below this (the white ones)
};

struct BedSpec {
  double fraction = 0.5;
  SurfaceSpec surface{};
  Top top = Top::cut;
  double loose_depth = 3;
  double depth = std::numeric_limits<double>::infinity();  // thickness of the bed
  bool mirror_below = false;                               // a perfect mirror under a bed of finite depth
  InnerScatter scatter{};
  double packet = 0;  // 0: every fibre has its own label; else fibres of a square of this side share one
};

// Polar angles are from the normal of the bed, radians; azimuth 0 is along the fibres.
struct Launch {
  double polar_low, polar_high;   // filled as a perfect diffuser would fill it; equal ends give one angle
  std::optional<double> azimuth;  // none: all azimuths alike
};
inline constexpr double kDegree = std::numbers::pi / 180;

// Fibres carry a label, uniform in [0, 1): the population with share s is label < s. Paths are kept by label
// in equal bins, so one photon serves every share that is a multiple of 1/kBins and every pair of optical
// depths.
inline constexpr int kBins = 20;

struct Photon {
  enum class End { returned, passed, lost };  // lost: path longer than `longest`, or along a fibre for ever
  End end = End::lost;
  double weight = 1;  // 1 on average over all photons of the same history (Russian roulette)
  Vector3 launched, direction;
  std::array<double, kBins> path{};  // inside the fibres, by label, diameters

  double path_below(int bins) const;  // in fibres with label < bins/kBins
  double path_total() const { return path_below(kBins); }
};

// Follows photon `index` of stream `seed`. After 8, 24, 72 … diameters of path half the photons go on with
// double weight. Light that has gone further than `longest` inside fibres is given up as lost.
Photon follow(const BedSpec& bed, const Packing& packing, const Launch& launch, double longest, uint64_t seed,
              uint64_t index);

// The packing of a bed.
Packing pack(const BedSpec& bed, uint64_t seed);

}  // namespace strandline::fibre_bed
