#include "packing.h"

#include <algorithm>
#include <numbers>
#include <stdexcept>
#include <string>

#include "random.h"

namespace strandline::fibre_bed {

namespace {

double wrapped(double x, double side) { return x - side * std::floor(x / side); }

// Shortest distance squared between points of the periodic plane.
double apart2(Point a, Point b, double side) {
  double y = std::abs(a.y - b.y), z = std::abs(a.z - b.z);
  y = std::min(y, side - y);
  z = std::min(z, side - z);
  return y * y + z * z;
}

}  // namespace

bool Packing::fits(Point p, int except) const {
  const int iy = static_cast<int>(p.y), iz = static_cast<int>(p.z);
  for (int dz = -1; dz <= 1; ++dz)
    for (int dy = -1; dy <= 1; ++dy)
      for (int disc : near_[((iz + dz + side_) % side_) * side_ + (iy + dy + side_) % side_])
        if (disc != except && apart2(centres_[disc], p, side_) < 1) return false;
  return true;
}

void Packing::place(Point p) {
  near_[static_cast<int>(p.z) * side_ + static_cast<int>(p.y)].push_back(static_cast<int>(centres_.size()));
  centres_.push_back(p);
}

void Packing::move(int disc, Point to) {
  Point& p = centres_[disc];
  std::erase(near_[static_cast<int>(p.z) * side_ + static_cast<int>(p.y)], disc);
  near_[static_cast<int>(to.z) * side_ + static_cast<int>(to.y)].push_back(disc);
  p = to;
}

Packing::Packing(const PackingSpec& spec) : side_(spec.side) {
  if (!(spec.fraction >= 0.01 && spec.fraction <= 0.6))
    throw std::invalid_argument("packing fraction " + std::to_string(spec.fraction) + " is not in [0.01, 0.6]");
  if (side_ < 4) throw std::invalid_argument("packing side " + std::to_string(side_) + " is below 4 diameters");
  near_.resize(side_ * side_);
  Random random(spec.seed, 0x7061636bULL);
  const size_t wanted = static_cast<size_t>(std::lround(spec.fraction * side_ * side_ * 4 / std::numbers::pi));
  size_t in_row = 0;
  if (spec.row) {
    for (int i = 0; i < 200 * side_ && centres_.size() < wanted; ++i)
      if (const Point p{random.uniform() * side_, 0.5}; fits(p, -1)) place(p);
    in_row = centres_.size();
  }
  constexpr int patience = 4000, rounds = 3000;
  for (int round = 0; centres_.size() < wanted; ++round) {
    if (round == rounds) throw std::runtime_error("no room for the packing; lower the fraction");
    for (int i = 0; i < patience && centres_.size() < wanted; ++i)
      if (const Point p{random.uniform() * side_, random.uniform() * side_}; fits(p, -1)) place(p);
    if (centres_.size() == wanted) break;
    // Shake: every disc but the row tries one small step.
    for (size_t d = in_row; d < centres_.size(); ++d) {
      const Point to{wrapped(centres_[d].y + 0.2 * (random.uniform() - 0.5), side_),
                     wrapped(centres_[d].z + 0.2 * (random.uniform() - 0.5), side_)};
      if (fits(to, static_cast<int>(d))) move(static_cast<int>(d), to);
    }
  }
  build_grid();
}

void Packing::build_grid() {
  std::vector<std::vector<Entry>> cells(side_ * side_);
  for (int disc = 0; disc < static_cast<int>(centres_.size()); ++disc) {
    const Point c = centres_[disc];
    for (int z = static_cast<int>(std::floor(c.z - 0.5)); z <= static_cast<int>(std::floor(c.z + 0.5)); ++z)
      for (int y = static_cast<int>(std::floor(c.y - 0.5)); y <= static_cast<int>(std::floor(c.y + 0.5)); ++y) {
        // The square of the plane nearest to the disc must touch it.
        const double near_y = std::clamp(c.y, double(y), double(y + 1)) - c.y,
                     near_z = std::clamp(c.z, double(z), double(z + 1)) - c.z;
        if (near_y * near_y + near_z * near_z > 0.25) continue;
        const int ty = y < 0 ? 1 : y >= side_ ? -1 : 0, tz = z < 0 ? 1 : z >= side_ ? -1 : 0;
        cells[(z + tz * side_) * side_ + y + ty * side_].push_back(
            {{c.y + ty * side_, c.z + tz * side_}, disc, ty, tz});
      }
  }
  start_.assign(1, 0);
  for (const auto& cell : cells) {
    entries_.insert(entries_.end(), cell.begin(), cell.end());
    start_.push_back(static_cast<int>(entries_.size()));
  }
}

}  // namespace strandline::fibre_bed
