// The spectral grid of the engine: 31 bands, 400 to 700 nm in steps of 10 nm.
#pragma once
#include <array>

namespace strandline {

inline constexpr int kBands = 31;
inline constexpr double kFirstNm = 400, kStepNm = 10, kLastNm = kFirstNm + kStepNm * (kBands - 1);

// One number per band: reflectance 0…1, optical depth, K/S and the like, in order of wavelength.
using Spectrum = std::array<double, kBands>;

// Wavelength in nm of band 0…30.
constexpr double band_nm(int band) { return kFirstNm + kStepNm * band; }

}  // namespace strandline
