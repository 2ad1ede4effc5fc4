// How long a span takes to be painted.
#pragma once

#include <algorithm>

#include "generated/constants.h"
#include "strandline/head.h"

namespace strandline {

// Minutes, at this colourist's own pace: the parting line, then combing through the length.
inline double apply_minutes(const Area& area, const Span& span) {
  const Constants c;
  double minutes = c.apply_min_per_cm_length * (span.to_cm - span.from_cm);
  if (touches_scalp(span)) minutes += c.apply_min_per_scalp_cm2 * area.scalp_cm2;
  return std::max(0.5, minutes);
}

}  // namespace strandline
