// From spectra to colour numbers: CIE XYZ, CIELAB, CIEDE2000 and sRGB for screens.
#pragma once
#include "strandline/illuminant.h"
#include "strandline/spectrum.h"

namespace strandline {

struct Xyz {
  double x, y, z;  // Y = 100 for the perfect white
};

// CIELAB (ISO/CIE 11664-4). l 0…100 for reflecting surfaces.
struct Lab {
  double l, a, b;
};

// CIELAB in polar form; h in degrees, 0 ≤ h < 360, and 0 for an exact grey.
struct Lch {
  double l, c, h;
};

enum class Observer { cie_1931_2deg, cie_1964_10deg };

// XYZ = Σ w·R over the 31 bands. All weights are ≥ 0, so more reflectance never means less X, Y or Z.
struct Weights {
  Spectrum x, y, z;
  Xyz white;  // sum of the weights, Y = 100
};

// The 5 nm sums over 360–830 nm folded onto the 31 bands: between bands the reflectance is read as a cubic (a
// straight line where a cubic would cost a negative weight), beyond 400 and 700 nm as constant. For D65 and A
// each column is then scaled (by less than 2e-4) so that its sum is the white point published in ASTM E308;
// CIELAB does not change by that.
const Weights& weights(Light light, Observer observer);

// The same folding for any light, scaled to Y = 100 and to nothing else. Powers ≥ 0, not all 0.
Weights fold(const Power& light, Observer observer);

Xyz xyz(const Spectrum& reflectance, const Weights& w);
Xyz xyz(const Lab& colour, const Xyz& white);

// Requires white > 0 in all three.
Lab lab(const Xyz& colour, const Xyz& white);
Lab lab(const Spectrum& reflectance, const Weights& w);
Lab lab(const Lch& colour);
Lch lch(const Lab& colour);

// Euclidean distance in CIELAB (CIE 1976).
double delta_e_ab(const Lab& p, const Lab& q);

// CIEDE2000 with kL = kC = kH = 1 (ISO/CIE 11664-6; notes on its branches: Sharma, Wu, Dalal 2005).
// Symmetric.
double delta_e_2000(const Lab& p, const Lab& q);

// sRGB (IEC 61966-2-1), encoded, each 0…1.
struct Srgb {
  double r, g, b;
  bool in_gamut;  // false: the screen cannot show the colour; lightness and CIELAB hue are kept, chroma is cut
};

// A colour seen under `white`, adapted to the screen's D65 (Bradford, linear) so that white stays white.
Srgb srgb(const Xyz& colour, const Xyz& white);

}  // namespace strandline
