#include "colorants.h"

#include <cmath>
#include <cstring>

namespace strandline::demo {
namespace {

double bell(int b, double peak, double sd) {
  const double x = (band_nm(b) - peak) / sd;
  return std::exp(-x * x / 2);
}

}  // namespace

Spectrum band(const char* name, double strength) {
  Spectrum s{};
  for (int b = 0; b < kBands; ++b) {
    if (!std::strcmp(name, "yellow")) s[b] = bell(b, 440, 42);
    if (!std::strcmp(name, "red")) s[b] = bell(b, 515, 40);
    if (!std::strcmp(name, "violet")) s[b] = bell(b, 565, 42);
    if (!std::strcmp(name, "blue")) s[b] = bell(b, 605, 46);
    if (!std::strcmp(name, "green")) s[b] = bell(b, 440, 42) * 0.45 + bell(b, 640, 46);
    s[b] *= strength;
  }
  return s;
}

}  // namespace strandline::demo
