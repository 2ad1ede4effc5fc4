#pragma once
// Where the fibres are: a random packing of equal discs in the plane across the fibres, repeated both ways.
// Lengths are in fibre diameters.
#include <cstdint>
#include <optional>
#include <vector>

namespace strandline::fibre_bed {

struct Point {
  double y = 0, z = 0;
};

struct PackingSpec {
  double fraction = 0.5;  // share of the volume that is fibre, in [0.01, 0.6]
  int side = 20;          // period, whole diameters, >= 4
  bool row = false;       // start from a random row of discs at z = 0.5: a bed combed flat against a plane
  uint64_t seed = 1;
};

class Packing {
 public:
  // Random sequential addition; discs are shaken when there is no room. Throws std::invalid_argument on a
  // fraction out of range and std::runtime_error when the discs do not fit.
  explicit Packing(const PackingSpec& spec);

  struct Hit {
    double distance;  // in the plane
    Point centre;
    uint64_t fibre;  // the same for every visit to the same fibre of the endless bed
  };

  // First fibre on the ray from `origin` along unit (y, z) `along`, of those that `exists(centre, fibre)`
  // accepts. `skip` is the fibre just left. The search ends, with nothing, where z leaves [top, bottom].
  template <class Exists>
  std::optional<Hit> first_hit(Point origin, Point along, uint64_t skip, double top, double bottom,
                               Exists exists) const;

  const std::vector<Point>& centres() const { return centres_; }
  int side() const { return side_; }

 private:
  struct Entry {
    Point centre;  // relative to the tile of the grid cell; may lie outside [0, side)
    int disc;
    int tile_y, tile_z;  // tile of the centre relative to the tile of the cell
  };
  bool fits(Point p, int except) const;
  void place(Point p);
  void move(int disc, Point to);
  void build_grid();

  int side_;
  std::vector<Point> centres_;
  std::vector<std::vector<int>> near_;  // discs by the unit square of their centre, while packing
  std::vector<int> start_;              // entries of cell c: [start_[c], start_[c + 1])
  std::vector<Entry> entries_;
};

}  // namespace strandline::fibre_bed

#include "packing_hit.h"
