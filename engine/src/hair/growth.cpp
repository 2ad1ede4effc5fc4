#include "strandline/growth.h"

#include "generated/constants.h"

namespace strandline {

Reading regrowth_cm(double weeks) {
  constexpr double kDaysPerMonth = 30.4, kMmPerCm = 10;
  const Constants c;
  const double months = 7 * weeks / kDaysPerMonth;
  double sd = 0;
  for (const ConstantInfo& info : constant_infos)
    if (info.member == &Constants::growth_mm_per_month) sd = info.sd;
  return {c.growth_mm_per_month * months / kMmPerCm, sd * months / kMmPerCm};
}

}  // namespace strandline
