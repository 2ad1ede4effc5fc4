#include <algorithm>
#include <cmath>

#include "study.h"

namespace strandline::fibre_bed {

namespace {

constexpr int kBlocks = 64;
constexpr double kTrap = 6 * kDegree;  // half-angle of the gloss trap of a sphere, common practice

// Light that comes back between the polar angles low and high and within `sector` of the azimuth, as a share
// of what a perfect white diffuser would send there.
struct Detector {
  double low = 40 * kDegree, high = 50 * kDegree, sector = 10 * kDegree;
  double diffuser() const { return std::pow(std::sin(high), 2) - std::pow(std::sin(low), 2); }
};

void add(std::span<double> sums, int view, std::span<const double> tau, const Photon& p, double factor) {
  const double path = p.path_total();
  for (size_t i = 0; i < tau.size(); ++i) sums[view * tau.size() + i] += factor * p.weight * std::exp(-tau[i] * path);
}

std::vector<Value> values(const Tally& t, int view, int n) {
  std::vector<Value> v;
  for (int i = view * n; i < (view + 1) * n; ++i) v.push_back({t.mean(i), t.standard_error(i)});
  return v;
}

}  // namespace

Geometry study_geometry(const BedSpec& bed, double photons, const Effort& effort) {
  Geometry g;
  g.tau = curve_depths();
  g.tau.erase(g.tau.begin());
  const int n = static_cast<int>(g.tau.size());
  Experiment r{.bed = bed,
               .longest = 1500,
               .blocks = kBlocks,
               .photons = std::max(1, static_cast<int>(photons * effort.scale / kBlocks)),
               .seed = mix(effort.seed, 31),
               .threads = effort.threads};
  const Tally sphere = run(r, 2 * n, [&](const Photon& p, std::span<double> sums) {
    if (p.end != Photon::End::returned) return;
    add(sums, 0, g.tau, p, 1);
    const Vector3 mirror{p.launched.x, p.launched.y, -p.launched.z};
    if (dot(mirror, p.direction) < std::cos(kTrap)) add(sums, 1, g.tau, p, 1);
  });
  // Light and view may be exchanged, so light from the narrow cone seen by a ring at 45 degrees is the 45/0
  // reading, and one run serves every direction of the fibres.
  r.launch = {0, 10 * kDegree, {}};
  r.seed = mix(effort.seed, 32);
  const Detector d;
  const double whole = 1 / d.diffuser(), part = whole * 2 * std::numbers::pi / (4 * d.sector);
  const Tally ring = run(r, 3 * n, [&](const Photon& p, std::span<double> sums) {
    const double polar = std::acos(std::clamp(-p.direction.z, -1.0, 1.0));
    if (p.end != Photon::End::returned || polar < d.low || polar > d.high) return;
    add(sums, 0, g.tau, p, whole);
    const double from_axis = std::atan2(std::abs(p.direction.y), std::abs(p.direction.x));
    if (from_axis < d.sector) add(sums, 1, g.tau, p, part);
    if (from_axis > 90 * kDegree - d.sector) add(sums, 2, g.tau, p, part);
  });
  g.sphere = values(sphere, 0, n);
  g.sphere_excluded = values(sphere, 1, n);
  g.average = values(ring, 0, n);
  g.along = values(ring, 1, n);
  g.across = values(ring, 2, n);
  return g;
}

}  // namespace strandline::fibre_bed
