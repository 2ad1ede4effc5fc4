// M14: what a miss costs, in levels. Convex in L*, a*, b* by construction: sums of hinges, lopsided.
#pragma once

#include "strandline/aim.h"
#include "strandline/colour.h"
#include "strandline/levels.h"

namespace strandline {

// The loss of one zone in one scenario, prepared for its target. Everything is a slope per unit of L*, a*b* or
// contrast.
struct ZoneLoss {
  Lab target;
  double dark = 0, light = 0;  // per L* below / above the target
  Axis axis;                   // warm axis of the target
  double warm = 0, cool = 0;   // per a*b* unit along the axis, towards / away from warmth
  double green = 0, red = 0;   // across the axis: towards green / towards red
  double contrast = 0;         // per L* of |white − pigmented| beyond `contrast_free`
  double contrast_free = 0;    // L* that still counts as covered
};

ZoneLoss zone_loss(const Target& target, double covered_contrast_levels);

// `contrast` = |L* white − L* pigmented| afterwards, 0 where only one kind of fibre is there. Result in levels, ≥ 0.
double loss(const ZoneLoss& z, const Lab& result, double contrast);

}  // namespace strandline
