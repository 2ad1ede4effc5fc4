// measure: what an instrument says of swatches and strands, from its file or typed.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/colour.h"
#include "strandline/result.h"
#include "strandline/spectrum.h"

namespace strandline::measured {

struct Sample {
  std::string name;  // as the file calls it; its number where it has no name
  int line = 0;
  std::optional<Spectrum> reflectance;  // 31 bands, 0…1
  Lab lab{};                            // D65/10°: from the spectrum where there is one, else as the file says
};

struct File {
  std::vector<Sample> samples;  // at least one
  Problems notes;               // measured_other_light {light}: L*a*b* alone, not for D65/10° · cgats_count
};

// A measurement file: the text format of CGATS.17 and ISO 28178, or a table with separators (tab, semicolon, comma),
// one sample a line under a heading with wavelengths in nm or L*, a*, b*; numbers with point or comma. At most 16 MB.
// Problems: those of cgats.h · measured_nothing (neither spectra nor L*a*b*) · measured_impossible {line, field, got}
// (reflectance outside 0…1.6, L* outside 0…100, a* or b* beyond ±150) · table_row_length {line, expected, got} ·
// table_no_heading.
Result<File> read(std::string_view text);

// L*a*b* typed by hand, as D65/10°: "54.2 8.1 19.6", with commas for points and semicolons between them too. Problems:
// lab_typed {got}, measured_impossible.
Result<Lab> typed(std::string_view text);

}  // namespace strandline::measured
