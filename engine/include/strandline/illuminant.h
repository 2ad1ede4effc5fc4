// Lights as spectral power on the 360–830 nm, 5 nm grid of the CIE observers.
#pragma once
#include <array>
#include <optional>

#include "strandline/spectrum.h"

namespace strandline {

inline constexpr int kPowers = 95;
// Relative spectral power at 360, 365 … 830 nm; only ratios matter.
using Power = std::array<double, kPowers>;

constexpr double power_nm(int i) { return 360 + 5 * i; }

// The lights a colour is judged under: D65, CIE A, CIE LED-B3 (phosphor LED, about 4100 K), CIE FL11
// (three-band fluorescent, about 4000 K). The last two differ most in shape at nearly the same white: a fair
// test of metamerism.
enum class Light { daylight, lamp, led, fluorescent };
inline constexpr std::array<Light, 4> kLights = {Light::daylight, Light::lamp, Light::led, Light::fluorescent};

// CIE daylight of a correlated colour temperature in kelvin (on the present scale, c2 = 1.4388e-2 m K),
// 4000…25000; nothing outside that range, where the formula is not defined. D65 is daylight(6500 * 1.4388
// / 1.4380). Source: CIE 15:2004 §3.1 with tables S0, S1, S2; M1 and M2 rounded to three decimals as CIE
// prescribes.
std::optional<Power> daylight(double kelvin);

// CIE standard illuminant A (ISO 11664-2): 100 at 560 nm, by its defining formula.
double illuminant_a(double nm);

// Spectral power of one light. Outside 380–780 nm the tables of FL11 and LED-B3 end and the power is 0.
const Power& power(Light light);

}  // namespace strandline
