#include "evidence/truth_camera.h"

#include <algorithm>
#include <cmath>

namespace strandline::truth {
namespace {

double bell(double nm, double peak, double width) {
  const double x = (nm - peak) / width;
  return std::exp(-x * x / 2);
}

// 0 below, 1 above, over some nanometres.
double edge(double nm, double at, double over) { return 1 / (1 + std::exp(-(nm - at) / over)); }

// Planck's law, relative to 560 nm.
double black_body(double nm, double kelvin) {
  constexpr double kSecond = 1.438776877e7;  // nm·K
  auto power = [&](double l) { return std::pow(l, -5) / std::expm1(kSecond / (l * kelvin)); };
  return power(nm) / power(560);
}

double decoded(double code) { return code <= 0.04045 ? code / 12.92 : std::pow((code + 0.055) / 1.055, 2.4); }
double encoded(double linear) {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
}

}  // namespace

Printer::Printer(Random& random) {
  paper_ = random.uniform(0.82, 0.9), paper_blue_ = random.uniform(-0.04, 0.05);
  gain_ = random.lognormal(1, 0.12), unwanted_ = random.uniform(0.08, 0.2), shift_ = random.normal(0, 6);
}

Spectrum Printer::printed(const std::array<double, 3>& asked) const {
  std::array<double, 3> ink{};  // cyan, magenta, yellow as optical densities
  for (int i = 0; i < 3; ++i) ink[i] = gain_ * -std::log10(std::max(0.02, decoded(asked[i])));
  const double black = 0.6 * *std::min_element(ink.begin(), ink.end());  // grey is mostly printed in black
  for (double& d : ink) d -= black;
  Spectrum r{};
  for (int b = 0; b < kBands; ++b) {
    const double nm = band_nm(b);
    const double cyan = edge(nm, 575 + shift_, 14) + unwanted_ * bell(nm, 450, 60);
    const double magenta = bell(nm, 545 + shift_, 38) + unwanted_ * bell(nm, 430, 40);
    const double yellow = (1 - edge(nm, 492 + shift_, 10)) + 0.3 * unwanted_ * bell(nm, 540, 30);
    const double density = ink[0] * cyan + ink[1] * magenta + ink[2] * yellow + black * (1 - 0.0002 * (nm - 550));
    r[b] = 0.004 + (paper_ + paper_blue_ * bell(nm, 440, 25)) * std::pow(10, -density);
  }
  return r;
}

Camera::Camera(Random& random, Lamp lamp) {
  const double kelvin = lamp == Lamp::bulb ? random.uniform(2600, 3000) : random.uniform(5000, 7000);
  const double blue = lamp == Lamp::warm_led ? random.uniform(0.25, 0.45) : random.uniform(0.8, 1.3);
  const double middle = lamp == Lamp::warm_led ? random.normal(600, 6) : random.normal(565, 6);
  for (int b = 0; b < kBands; ++b) {
    const double nm = band_nm(b);
    switch (lamp) {
      case Lamp::daylight:
        light_[b] = black_body(nm, kelvin) * (1 - 0.1 * bell(nm, 690, 15)) * edge(nm, 385, 12);
        break;
      case Lamp::bulb:
        light_[b] = black_body(nm, kelvin);
        break;
      case Lamp::warm_led:
      case Lamp::cool_led:
        light_[b] = blue * bell(nm, 452, 11) + bell(nm, middle, 58) + 0.15 * bell(nm, 640, 25);
        break;
      case Lamp::tube:
        light_[b] = 0.35 * bell(nm, 570, 60) + 0.9 * bell(nm, 545, 7) + 0.9 * bell(nm, 612, 7) +
                    0.5 * bell(nm, 440, 9) + 0.3 * bell(nm, 490, 8) + 0.1;
        break;
    }
  }
  const double peaks[3] = {598, 535, 458}, widths[3] = {36, 40, 30};
  for (int i = 0; i < 3; ++i) {
    const double peak = peaks[i] + random.normal(0, 5), width = widths[i] * random.lognormal(1, 0.06);
    for (int b = 0; b < kBands; ++b) eyes_[i][b] = bell(band_nm(b), peak, width) + 0.04 * bell(band_nm(b), 540, 90);
  }
  flare_ = random.uniform(0.002, 0.012), fall_x_ = random.uniform(-0.12, 0.12), fall_y_ = random.uniform(-0.12, 0.12);
  contrast_ = random.uniform(0, 0.25), noise_ = random.uniform(1, 4), saturation_ = random.uniform(0.25, 0.5);
  Spectrum grey{};
  grey.fill(1);
  const auto white = raw(grey);
  for (int i = 0; i < 3; ++i) balance_[i] = random.lognormal(1, 0.05) / white[i];
  exposure_ = random.uniform(0.7, 0.98);
}

std::array<double, 3> Camera::raw(const Spectrum& reflectance) const {
  std::array<double, 3> sum{};
  for (int i = 0; i < 3; ++i)
    for (int b = 0; b < kBands; ++b) sum[i] += light_[b] * eyes_[i][b] * reflectance[b];
  return sum;
}

std::vector<std::array<double, 3>> Camera::photo(const std::vector<Spot>& spots, Random& random) const {
  std::vector<std::array<double, 3>> out;
  for (const Spot& spot : spots) {
    auto v = raw(spot.reflectance);
    const double light = (1 + fall_x_ * (spot.x - 0.5)) * (1 + fall_y_ * (spot.y - 0.5));
    for (int i = 0; i < 3; ++i) v[i] = exposure_ * (light * balance_[i] * v[i] + flare_);
    // The maker's matrix: each channel less the others, so that colours look alive.
    const double grey = (v[0] + v[1] + v[2]) / 3;
    std::array<double, 3> code{};
    for (int i = 0; i < 3; ++i) {
      const double linear = std::clamp(grey + (1 + saturation_) * (v[i] - grey), 0.0, 1.0);
      const double e = encoded(linear);
      const double curved = e + contrast_ * e * (1 - e) * (2 * e - 1);
      code[i] = std::clamp(255 * curved + random.normal(0, noise_ / std::sqrt(spot.pixels / 100.0)), 0.0, 255.0);
    }
    out.push_back(code);
  }
  return out;
}

}  // namespace strandline::truth
