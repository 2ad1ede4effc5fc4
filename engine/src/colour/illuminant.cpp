#include "strandline/illuminant.h"

#include <cmath>

#include "generated/tables.h"

namespace strandline {
namespace {

double to_three_decimals(double v) { return std::round(v * 1000) / 1000; }

template <class Table>
Power placed(const Table& table) {
  Power p{};
  for (const auto& row : table) {
    const int i = static_cast<int>(std::lround((row[0] - power_nm(0)) / 5));
    if (i >= 0 && i < kPowers) p[i] = row[1];
  }
  return p;
}

Power daylight_power(double kelvin) {
  // Chromaticity of daylight, CIE 15:2004 eq. 3.1–3.3.
  const double u = 1e3 / kelvin;
  const double x = kelvin <= 7000 ? 0.244063 + u * (0.09911 + u * (2.9678 - u * 4.6070))
                                  : 0.237040 + u * (0.24748 + u * (1.9018 - u * 2.0064));
  const double y = -0.275 + x * (2.870 - 3.000 * x);

  // Share of the two characteristic vectors, eq. 3.4–3.5.
  const double m = 0.0241 + 0.2562 * x - 0.7341 * y;
  const double m1 = to_three_decimals((-1.3515 - 1.7703 * x + 5.9114 * y) / m);
  const double m2 = to_three_decimals((0.0300 - 31.4424 * x + 30.0717 * y) / m);

  Power p{};
  for (const auto& [nm, s0, s1, s2] : tables::cie_daylight_components) {
    if (nm < power_nm(0)) continue;
    p[static_cast<int>(std::lround((nm - power_nm(0)) / 5))] = s0 + m1 * s1 + m2 * s2;
  }
  return p;
}

}  // namespace

std::optional<Power> daylight(double kelvin) {
  if (!(kelvin >= 4000 && kelvin <= 25000)) return std::nullopt;
  return daylight_power(kelvin);
}

double illuminant_a(double nm) {
  const double c2 = 1.435e7, t = 2848;  // nm K and K, as the definition fixes them
  return 100 * std::pow(560 / nm, 5) * std::expm1(c2 / (t * 560)) / std::expm1(c2 / (t * nm));
}

const Power& power(Light light) {
  static const Power d65 = daylight_power(6500 * 1.4388 / 1.4380);
  static const Power a = [] {
    Power p{};
    for (int i = 0; i < kPowers; ++i) p[i] = illuminant_a(power_nm(i));
    return p;
  }();
  static const Power led = placed(tables::cie_led_b3), fluorescent = placed(tables::cie_fl11);
  switch (light) {
    case Light::daylight:
      return d65;
    case Light::lamp:
      return a;
    case Light::led:
      return led;
    case Light::fluorescent:
      return fluorescent;
  }
  return d65;
}

}  // namespace strandline
