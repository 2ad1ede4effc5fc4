// Row groups of the evidence table.
#pragma once

#include "strandline/evidence.h"

namespace strandline {

class Rows {
 public:
  void add(std::string id, double expected, double got, double tolerance, std::string source);
  // got within [low, high].
  void between(std::string id, double low, double high, double got, std::string source) {
    add(std::move(id), (low + high) / 2, got, (high - low) / 2, std::move(source));
  }
  std::vector<EvidenceRow> rows;
};

void colour_rows(Rows& rows);                     // white points, CIEDE2000, Kubelka–Munk
void hair_rows(Rows& rows);                       // natural hair, melanin, uptake, growth
void law_rows(Rows& rows);                        // peroxide, mixing, salts, limits
void later_rows(Rows& rows);                      // fade, regrowth line, scalp heat
void coverage_rows(Rows& rows);                   // stated ranges against a simulated truth
void trade_rows(Rows& rows, const Shelf& shelf);  // lift, average rule, white beside pigmented, tone

}  // namespace strandline
