#pragma once
// First hit by walking the unit squares of the plane along the ray. Included by packing.h.
#include <cmath>
#include <limits>

namespace strandline::fibre_bed {

inline uint64_t fibre_id(int64_t tile_y, int64_t tile_z, int disc) {
  return (static_cast<uint64_t>(tile_y & 0xffffff) << 40) | (static_cast<uint64_t>(tile_z & 0xffffff) << 16) |
         static_cast<uint64_t>(disc & 0xffff);
}

template <class Exists>
std::optional<Packing::Hit> Packing::first_hit(Point origin, Point along, uint64_t skip, double top, double bottom,
                                               Exists exists) const {
  constexpr double never = std::numeric_limits<double>::infinity();
  constexpr double radius2 = 0.25;
  int64_t cy = static_cast<int64_t>(std::floor(origin.y)), cz = static_cast<int64_t>(std::floor(origin.z));
  const int step_y = along.y > 0 ? 1 : -1, step_z = along.z > 0 ? 1 : -1;
  const double delta_y = along.y == 0 ? never : 1 / std::abs(along.y),
               delta_z = along.z == 0 ? never : 1 / std::abs(along.z);
  double next_y = along.y == 0 ? never : (along.y > 0 ? double(cy + 1) - origin.y : origin.y - double(cy)) * delta_y;
  double next_z = along.z == 0 ? never : (along.z > 0 ? double(cz + 1) - origin.z : origin.z - double(cz)) * delta_z;
  std::optional<Hit> best;
  double best_distance = never;
  while (true) {
    // Tile of this square and the square inside the tile.
    const int64_t tile_y = (cy >= 0 ? cy : cy - side_ + 1) / side_, tile_z = (cz >= 0 ? cz : cz - side_ + 1) / side_;
    const int cell = static_cast<int>((cz - tile_z * side_) * side_ + (cy - tile_y * side_));
    for (int i = start_[cell]; i < start_[cell + 1]; ++i) {
      const Entry& e = entries_[i];
      const Point centre{e.centre.y + double(tile_y * side_), e.centre.z + double(tile_z * side_)};
      const double ry = centre.y - origin.y, rz = centre.z - origin.z;
      const double b = ry * along.y + rz * along.z;
      const double offset = ry * along.z - rz * along.y;
      if (b <= 0 || offset * offset >= radius2) continue;
      const double distance = b - std::sqrt(radius2 - offset * offset);
      if (distance >= best_distance) continue;
      const uint64_t fibre = fibre_id(tile_y + e.tile_y, tile_z + e.tile_z, e.disc);
      if (fibre == skip || !exists(centre, fibre)) continue;
      best_distance = distance;
      best = Hit{std::max(0.0, distance), centre, fibre};
    }
    const double exit = std::min(next_y, next_z);
    if (best && best_distance <= exit) return best;
    if (next_y < next_z) {
      cy += step_y;
      next_y += delta_y;
    } else {
      cz += step_z;
      next_z += delta_z;
      if (double(cz + 1) < top || double(cz) > bottom) return best;
    }
  }
}

}  // namespace strandline::fibre_bed
