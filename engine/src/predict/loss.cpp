#include "strandline/loss.h"

#include <algorithm>
#include <cmath>

#include "generated/constants.h"

namespace strandline {

ZoneLoss zone_loss(const Target& target, double covered_contrast_levels) {
  const Constants c;
  const double slope = levels_per_lightness(std::clamp(target.level, level_lowest, level_highest));
  ZoneLoss z;
  z.target = target.lab;
  z.dark = c.price_dark_per_level * slope;
  z.light = c.price_light_per_level * slope;
  z.axis = warm_axis(target.lab);
  z.warm = c.price_warm_per_unit;
  z.cool = c.price_cool_per_unit;
  z.green = c.price_green_per_unit;
  z.red = c.price_red_per_unit;
  z.contrast = c.price_contrast_per_level * slope;
  z.contrast_free = covered_contrast_levels / slope;
  return z;
}

double loss(const ZoneLoss& z, const Lab& result, double contrast) {
  const double dl = result.l - z.target.l, da = result.a - z.target.a, db = result.b - z.target.b;
  const double along = da * z.axis.a + db * z.axis.b;
  const double across = da * z.axis.b - db * z.axis.a;  // positive = redder
  return std::max(-z.dark * dl, z.light * dl) + std::max(z.warm * along, -z.cool * along) +
         std::max(z.red * across, -z.green * across) + z.contrast * std::max(0.0, contrast - z.contrast_free);
}

}  // namespace strandline
