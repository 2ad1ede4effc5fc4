// Reader of measurement files in the text format of CGATS.17 and ISO 28178 and its common relatives.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/colour.h"
#include "strandline/result.h"
#include "strandline/spectrum.h"

namespace strandline::cgats {

struct Keyword {
  std::string key, value;  // value without its quotes; the words of an unquoted value joined by one space
  int line;
};

struct Row {
  int line;                        // where the row starts, from 1
  std::vector<std::string> cells;  // as many as the table has fields, quotes removed
};

struct Table {
  std::string identifier;  // "CGATS.17", "SPECT" …; empty where the file has none
  std::vector<Keyword> keywords;
  std::vector<std::string> fields;
  std::vector<Row> rows;
  int line = 0;  // where its data begin

  // The last value of a keyword, if it is there. Letter case does not matter.
  std::optional<std::string_view> value(std::string_view key) const;
  // The index of a field, if it is there. Letter case does not matter.
  std::optional<int> field(std::string_view name) const;
};

struct Document {
  std::vector<Table> tables;  // at least one
  Problems notes;             // what is odd but does no harm: "cgats_count" for NUMBER_OF_FIELDS
};

struct Limits {
  std::size_t bytes = 16u << 20, fields = 4096, rows = 100000, tables = 64, problems = 20;
};

// Reads a whole file: any line ending, tabs or blanks, `#` comments, quoted or bare words, rows that run over
// several lines, several tables (a table without its own format uses that of the table before). Every row is
// complete in the answer. A file that contradicts itself (wrong counts, missing end, broken row) is refused
// with every problem found, params "line" and, where it helps, "expected", "got" or "field". Bytes beyond
// ASCII are kept as they are.
Result<Document> read(std::string_view text, const Limits& limits = {});

// A number with decimal point or decimal comma; nothing for anything else, infinity and NaN included.
std::optional<double> number(std::string_view cell);

// One row as reflectance 0…1 on the 31 bands.
// Wavelengths come from the names (SPEC_380, nm380, SPECTRAL_NM380, R_380, 380 …); where the names are scaled
// (SPEC_380000), from SPECTRAL_START_NM and SPECTRAL_END_NM; or from SPECTRAL_NM cells beside SPECTRAL_PCT or
// SPECTRAL_DEC. Values are divided by SPECTRAL_NORM; without it they are taken as percent if any spectral
// value of the table exceeds 1.6 (no surface reflects that much, and no hair less than 1.6 % at all bands),
// else as they are. Requires 0 ≤ row < rows.
Result<Spectrum> spectrum(const Table& table, int row);

// One row's LAB_L, LAB_A, LAB_B. The file, not the number, says for which light and observer. Requires 0 ≤
// row < rows.
Result<Lab> lab(const Table& table, int row);

}  // namespace strandline::cgats
