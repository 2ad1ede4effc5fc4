#include <algorithm>
#include <cmath>

#include "generated/constants.h"
#include "strandline/formulate.h"

namespace strandline {

double mix_grams(const Head& head, const std::vector<std::string>& wanted, const FormulaPolicy& policy) {
  const Constants c;
  const double radius_cm = head.hair.diameter_um / 2 * 1e-4;
  const double g_per_cm = c.hair_density_g_per_cm3 * M_PI * radius_cm * radius_cm;  // of one hair
  double grams = 0;
  for (const ZoneRef& z : zones(head)) {
    if (std::find(wanted.begin(), wanted.end(), z.id) == wanted.end()) continue;
    const double scalp = scalp_cm2(head, *z.area);
    const double hairs = head.hair.hairs_per_cm2 * hair_factor(head, *z.area) * scalp;
    if (touches_scalp(*z.span)) grams += c.mix_g_per_scalp_cm2 * scalp;
    grams += c.mix_g_per_hair_g * hairs * g_per_cm * (z.span->to_cm - z.span->from_cm);
  }
  return grams > 0 ? std::max(c.mix_g_smallest, grams * policy.head_factor * (1 + policy.waste_share)) : 0;
}

}  // namespace strandline
