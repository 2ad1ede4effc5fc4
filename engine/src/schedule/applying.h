// How long a span takes to be painted.
#pragma once

#include <algorithm>

#include "generated/constants.h"
#include "strandline/head.h"

namespace strandline {

// Minutes, at this colourist's own pace: the parting line, then combing through the length; packets are woven, painted
// and wrapped.
inline double apply_minutes(const Head& head, const Area& area, const Span& span) {
  const Constants c;
  const double scalp = scalp_cm2(head, area);
  double minutes = c.apply_min_per_cm_length * (span.to_cm - span.from_cm);
  if (area.woven) {
    // The first span of a packet is the one it is taken up for; the others are painted while it is open.
    if (&span == &area.spans.front()) minutes += c.apply_min_per_woven_cm2 * scalp;
  } else if (touches_scalp(span)) {
    minutes += c.apply_min_per_scalp_cm2 * scalp;
  }
  return std::max(0.5, minutes);
}

}  // namespace strandline
