// The spectral grid of the engine: 31 bands, 400 to 700 nm in steps of 10 nm.
#pragma once
#include <array>
#include <optional>
#include <span>

namespace strandline {

inline constexpr int kBands = 31;
inline constexpr double kFirstNm = 400, kStepNm = 10, kLastNm = kFirstNm + kStepNm * (kBands - 1);

// One number per band: reflectance 0…1, optical depth, K/S and the like, in order of wavelength.
using Spectrum = std::array<double, kBands>;

// Wavelength in nm of band 0…30.
constexpr double band_nm(int band) { return kFirstNm + kStepNm * band; }

// Of the bands, each counted once.
constexpr double mean(const Spectrum& s) {
  double sum = 0;
  for (double v : s) sum += v;
  return sum / kBands;
}

// A measured curve on the 31 bands. `nm` rises strictly and has as many entries as `values`, at least 2;
// otherwise, or if it leaves more than one step of the grid uncovered at 400 or 700 nm, the answer is empty.
// On an even grid of six points or more Sprague's fifth-order formula (CIE 167:2005), on any other a straight
// line; up to one step beyond an end the end value holds. Points that lie on a band are taken as they are.
std::optional<Spectrum> resampled(std::span<const double> nm, std::span<const double> values);

}  // namespace strandline
