#include "strandline/evidence.h"

#include "evidence/rows.h"

namespace strandline {

std::string_view code(EvidenceKind kind) {
  static constexpr std::string_view codes[kEvidenceKinds] = {"outside_unused", "outside_fitted", "common_practice",
                                                             "own_simulation", "law_or_identity"};
  return codes[static_cast<int>(kind)];
}

void Rows::within(std::string id, double low, double high, double got, Basis basis) {
  constexpr double kRounding = 1e-12;
  const bool pass = got >= low - kRounding && got <= high + kRounding;  // false for NaN
  rows.push_back({std::move(id), basis.kind, basis.second_hand, low, high, got, std::move(basis.source), pass});
}

std::vector<EvidenceRow> evidence(const Shelf& shelf) {
  Rows rows;
  colour_rows(rows);
  hair_rows(rows);
  law_rows(rows);
  trade_rows(rows, shelf);
  practice_rows(rows);
  later_rows(rows);
  treated_rows(rows);
  coverage_rows(rows);
  return std::move(rows.rows);
}

std::vector<EvidenceRow> campaigns() {
  Rows rows;
  card_rows(rows);
  line_rows(rows);
  learned_rows(rows);
  return std::move(rows.rows);
}

}  // namespace strandline
