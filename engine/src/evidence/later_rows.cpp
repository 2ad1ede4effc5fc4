// What happens after the visit, and along the hair: fade, the regrowth line, warmth of the scalp.
#include "evidence/rows.h"
#include "strandline/fade.h"
#include "strandline/growth.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

constexpr int kRedBand = 12, kBlueBand = 21;  // 520 and 610 nm
constexpr const char* kClasses = "Practical Modern Hair Science, ch. 4, table 5";
constexpr const char* kReds = "J Cosmet Sci 72:278 (2021), table III";

double left(ProductClass cls, int band, double washes) { return dye_left(cls, band, 1, washes, 0, Constants{}); }

double of_twelve_after_two(int band) {
  return (1 - left(ProductClass::permanent, band, 2)) / (1 - left(ProductClass::permanent, band, 12));
}

}  // namespace

void later_rows(Rows& rows) {
  rows.between("fade.red.first_two_of_twelve_washes", 0.7, 1, of_twelve_after_two(kRedBand), kReds);
  rows.between("fade.brown.first_two_of_twelve_washes", 0.3, 0.7, of_twelve_after_two(kBlueBand), kReds);
  rows.between("fade.permanent.left_after_30_washes", 0.85, 1, left(ProductClass::permanent, kBlueBand, 30),
               "IFSCC Mag 11:139 (2008), more than 0.9 for modern shades; less for others");
  rows.between("fade.demi.left_after_24_washes", 0, 0.35, left(ProductClass::demi, kBlueBand, 24), kClasses);
  rows.between("fade.direct.left_after_8_washes", 0, 0.25, left(ProductClass::direct, kBlueBand, 8), kClasses);

  const Constants c;
  const double cm_a_week = regrowth_cm(1).value;
  rows.between("grow.two_levels_apart.weeks", 2, 4, c.line_level_cm / 2 / cm_a_week, "common practice");
  BowlChemistry bowl;
  bowl.peroxide_percent = 3;
  bowl.minutes = 35;
  const double lengths = treatment(bowl, 10, 15, c).exposure;
  rows.add("scalp_heat.first_2cm", 1.2, treatment(bowl, 0, 2, c).exposure / lengths, 0.1, "common practice");
  rows.add("scalp_heat.beyond_2.5cm", 1, treatment(bowl, 2.5, 5, c).exposure / lengths, 0.01, "common practice");
}

}  // namespace strandline
