// Measured spectra of hair against the model: two amounts of melanin and the instrument's own floor.
#pragma once

#include <cstdio>
#include <string>
#include <vector>

#include "hair.h"

namespace strandline::calibrate {

struct SpectrumFit {
  std::string name;
  double eumelanin = 0, pheomelanin = 0;  // % w/w
  double floor = 0;                       // reflectance that the geometry adds, may be below 0
  double delta_e = 0;                     // ΔE*ab, D65/10°, of the fitted to the measured curve
};

// A table with a head line: wavelength in nm, then one column of reflectance (0…1) a sample. Throws std::runtime_error
// with the line that is wrong.
struct MeasuredSpectrum {
  std::string name;
  Spectrum reflectance;
};
std::vector<MeasuredSpectrum> read_spectra(const std::string& path);

SpectrumFit fit_spectrum(const MeasuredSpectrum& measured, const Constants& constants);
void print_spectra(const std::vector<SpectrumFit>& fits, std::FILE* out);

}  // namespace strandline::calibrate
