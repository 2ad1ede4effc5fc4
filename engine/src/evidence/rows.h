// Row groups of the evidence table.
#pragma once

#include "generated/constants.h"
#include "strandline/evidence.h"

namespace strandline {

// Where a range comes from.
struct Basis {
  EvidenceKind kind;
  std::string source;
  bool second_hand = false;
};

inline Basis outside(std::string source) { return {EvidenceKind::outside_unused, std::move(source)}; }
inline Basis fitted(std::string source) { return {EvidenceKind::outside_fitted, std::move(source)}; }
inline Basis practice(std::string what = "common practice") { return {EvidenceKind::common_practice, std::move(what)}; }
inline Basis simulated(std::string source) { return {EvidenceKind::own_simulation, std::move(source)}; }
inline Basis law_or_identity(std::string source) { return {EvidenceKind::law_or_identity, std::move(source)}; }
inline Basis second_hand(Basis basis) { return basis.second_hand = true, basis; }

class Rows {
 public:
  void within(std::string id, double low, double high, double got, Basis basis);
  void about(std::string id, double expected, double half_width, double got, Basis basis) {
    within(std::move(id), expected - half_width, expected + half_width, got, std::move(basis));
  }
  std::vector<EvidenceRow> rows;
};

void colour_rows(Rows& rows);                     // CIEDE2000, Kubelka–Munk
void hair_rows(Rows& rows);                       // natural hair, black, melanin, uptake, growth
void law_rows(Rows& rows);                        // peroxide, mixing, salts, limits
void later_rows(Rows& rows);                      // fade
void practice_rows(Rows& rows);                   // one bowl on one kind of hair, the level it comes out at
void treated_rows(Rows& rows);                    // white hair, lightening, fade, damage, blends as measured
void learned_rows(Rows& rows);                    // what results teach, in simulated salons
void card_rows(Rows& rows);                       // a strand by a photo of the printed card
void line_rows(Rows& rows);                       // a line from few swatches
void coverage_rows(Rows& rows);                   // stated ranges against a simulated truth
void trade_rows(Rows& rows, const Shelf& shelf);  // lift, average rule, white beside pigmented, tone

// How far each cell of common practice is missed with these constants, in its half-widths.
std::vector<double> practice_misses(const Constants& constants);

}  // namespace strandline
