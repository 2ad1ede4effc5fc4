#include <string>

#include "evidence/rows.h"
#include "generated/tables.h"
#include "strandline/colour.h"
#include "strandline/kubelka_munk.h"

namespace strandline {
namespace {

std::string two(size_t n) { return (n < 10 ? "0" : "") + std::to_string(n); }

}  // namespace

void colour_rows(Rows& rows) {
  for (size_t i = 0; i < tables::ciede2000_pairs.size(); ++i) {
    const auto& p = tables::ciede2000_pairs[i];
    rows.about("ciede2000." + two(i + 1), p[6], 5e-5, delta_e_2000({p[0], p[1], p[2]}, {p[3], p[4], p[5]}),
               law_or_identity("Sharma, Wu, Dalal 2005, table 1"));
  }
  // Pairs that a paper worked out by the same formula: they check the arithmetic, not wool.
  const Basis source = law_or_identity("Wilmsmann, J Soc Cosmet Chem 11:560 (1960)");
  for (size_t i = 0; i < tables::wool_dyeings.size(); ++i) {
    const auto& [r, ks] = tables::wool_dyeings[i];
    // R is printed to three decimals: half a unit there is what K/S may differ by.
    const double rounding = std::abs(k_over_s(r - 5e-4) - k_over_s(r + 5e-4)) / 2 + 5e-4;
    rows.about("kubelka_munk.forward." + std::to_string(i + 1), ks, rounding, k_over_s(r), source);
    const double back = std::abs(r_infinity(ks - 5e-4) - r_infinity(ks + 5e-4)) / 2 + 5e-4;
    rows.about("kubelka_munk.back." + std::to_string(i + 1), r, back, r_infinity(ks), source);
  }
}

}  // namespace strandline
