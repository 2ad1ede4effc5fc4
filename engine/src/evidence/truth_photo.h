// Simulated photos: a sheet seen by a camera that stands askew, pixel by pixel.
#pragma once

#include <cstdint>
#include <vector>

#include "evidence/truth_camera.h"

namespace strandline::truth {

// What is printed on a sheet or lies on it, later ones over earlier ones; millimetres from its upper left corner.
struct Shape {
  double x_mm = 0, y_mm = 0, width_mm = 0, height_mm = 0;  // of a disk its middle, and its diameter as the width
  bool disk = false;
  Spectrum reflectance{};
  double streaks = 0;  // how much lighter and darker than the mean its strands are, as a share of it
};

struct Sheet {
  double width_mm = 0, height_mm = 0;
  Spectrum paper{}, table{};
  std::vector<Shape> shapes;
};

struct Pose {
  double turn_degrees = 0;          // in the plane of the picture
  double tilt_x = 0, tilt_y = 0;    // degrees by which the camera looks from aside
  double fills = 0.8;               // of the picture's width or height, whichever the sheet meets first
  double shift_x = 0, shift_y = 0;  // of the picture's width and height
};

struct Pixels {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;
};

// Light that falls off over the sheet goes on beyond it. Each pixel has the noise of a pixel, then the lens blurs it
// over its neighbours.
Pixels picture(const Sheet& sheet, const Camera& camera, const Pose& pose, int width, int height, Random& random);

}  // namespace strandline::truth
