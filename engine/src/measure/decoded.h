// A screen code of a channel, 0…255, and the light it stands for, 0…1 (IEC 61966-2-1).
#pragma once

#include <cmath>

namespace strandline::card {

inline double decoded(double code) {
  const double c = code / 255;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

inline double encoded(double light) {
  return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1 / 2.4) - 0.055);
}

}  // namespace strandline::card
