// Simulated printers, lamps and cameras: what a photo of a printed card with a strand in its window would hold.
#pragma once

#include <array>
#include <vector>

#include "evidence/truth_random.h"
#include "strandline/spectrum.h"

namespace strandline::truth {

// Pigment inks on paper, each with tails where it should not absorb.
class Printer {
 public:
  explicit Printer(Random& random);
  // What is printed where this colour (sRGB, encoded, 0…1 each) is asked for: never quite that.
  Spectrum printed(const std::array<double, 3>& asked) const;

 private:
  double paper_, paper_blue_, gain_, unwanted_, shift_;
};

enum class Lamp { daylight, warm_led, cool_led, tube, bulb };
inline constexpr int kLamps = 5;

struct Spot {
  double x = 0, y = 0;  // on the card, 0…1 each
  Spectrum reflectance{};
  int pixels = 2000;
};

// One lamp over a table and one telephone's camera: its sensitivities, its guess of white, its matrix and tone curve,
// light that falls off to one side, flare, noise and eight bits.
class Camera {
 public:
  Camera(Random& random, Lamp lamp);
  // The mean code of each spot, 0…255 for red, green and blue; clipped where it is too bright.
  std::vector<std::array<double, 3>> photo(const std::vector<Spot>& spots, Random& random) const;

 private:
  std::array<double, 3> raw(const Spectrum& reflectance) const;
  Spectrum light_{};
  std::array<Spectrum, 3> eyes_{};
  std::array<double, 3> balance_{1, 1, 1};
  double exposure_ = 1, flare_, fall_x_, fall_y_, contrast_, noise_, saturation_;
};

}  // namespace strandline::truth
