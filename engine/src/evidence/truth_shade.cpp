#include "evidence/truth_shade.h"

namespace strandline::truth {

Spectrum shade_of(double level, Word tone, const Light& bed, const Ladder& ladder, Random& random) {
  const double efold = random.normal(150, 20), strength = random.lognormal(1, 0.15);
  return shade_like(level, tone, efold, strength, bed, ladder);
}

Spectrum shade_like(double level, Word tone, double efold, double strength, const Light& bed, const Ladder& ladder) {
  struct Bell {
    double peak, width, height;
  };
  constexpr Bell kBells[kWords] = {{550, 50, 0},   {610, 45, 0.5}, {570, 45, 0.8}, {590, 60, 0.2},
                                   {440, 40, 0.8}, {500, 40, 0.9}, {520, 35, 1.3}, {640, 40, 0.5}};
  const Bell& bell = kBells[static_cast<int>(tone)];
  const double height = bell.height * strength;
  const double wanted = ladder.lightness(level);
  Spectrum load;
  for (int b = 0; b < kBands; ++b) {
    const double nm = band_nm(b), x = (nm - bell.peak) / bell.width;
    load[b] = std::exp(-(nm - 550) / efold) + height * std::exp(-x * x / 2);
  }
  double low = 0, high = 30;
  for (int i = 0; i < 20; ++i) {
    const double middle = (low + high) / 2;
    Hair h;
    for (int b = 0; b < kBands; ++b) h.dye[b] = middle * load[b];
    (bed.colour(h).l > wanted ? low : high) = middle;
  }
  for (double& d : load) d *= low;
  return load;
}

}  // namespace strandline::truth
