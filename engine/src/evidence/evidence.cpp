#include "strandline/evidence.h"

#include <cmath>

#include "evidence/rows.h"

namespace strandline {

void Rows::add(std::string id, double expected, double got, double tolerance, std::string source) {
  constexpr double kRounding = 1e-12;
  const bool pass = std::abs(got - expected) <= tolerance + kRounding;  // false for NaN
  rows.push_back({std::move(id), expected, got, tolerance, std::move(source), pass});
}

std::vector<EvidenceRow> evidence(const Shelf& shelf) {
  Rows rows;
  colour_rows(rows);
  hair_rows(rows);
  law_rows(rows);
  trade_rows(rows, shelf);
  later_rows(rows);
  coverage_rows(rows);
  return std::move(rows.rows);
}

}  // namespace strandline
