// What happens after the visit: fade.
#include "evidence/rows.h"
#include "strandline/fade.h"

namespace strandline {
namespace {

constexpr double kRed = 1, kBrown = 0;  // redness

double left(ProductClass cls, double red, double washes) { return dye_left(cls, red, 1, washes, 0, Constants{}); }

double of_twelve_after_two(double red) {
  return (1 - left(ProductClass::permanent, red, 2)) / (1 - left(ProductClass::permanent, red, 12));
}

}  // namespace

void later_rows(Rows& rows) {
  const Basis classes = fitted("Practical Modern Hair Science, ch. 4, table 5");
  const Basis reds = fitted("J Cosmet Sci 72:278 (2021), table III");
  rows.within("fade.red.first_two_of_twelve_washes", 0.7, 1, of_twelve_after_two(kRed), reds);
  rows.within("fade.brown.first_two_of_twelve_washes", 0.3, 0.7, of_twelve_after_two(kBrown), reds);
  rows.within("fade.demi.left_after_24_washes", 0, 0.35, left(ProductClass::demi, kBrown, 24), classes);
  rows.within("fade.direct.left_after_8_washes", 0, 0.25, left(ProductClass::direct, kBrown, 8), classes);
}

}  // namespace strandline
