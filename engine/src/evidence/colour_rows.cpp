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
  for (const auto& w : tables::published_white_points) {
    const Light light = w[0] == 0 ? Light::daylight : Light::lamp;
    const Observer observer = w[1] == 10 ? Observer::cie_1964_10deg : Observer::cie_1931_2deg;
    const Xyz got = weights(light, observer).white;
    const std::string id =
        std::string("white_point.") + (w[0] == 0 ? "d65." : "a.") + (w[1] == 10 ? "10deg." : "2deg.");
    rows.add(id + "x", w[2], got.x, 5e-4, "ASTM E308");
    rows.add(id + "z", w[4], got.z, 5e-4, "ASTM E308");
  }
  for (size_t i = 0; i < tables::ciede2000_pairs.size(); ++i) {
    const auto& p = tables::ciede2000_pairs[i];
    rows.add("ciede2000." + two(i + 1), p[6], delta_e_2000({p[0], p[1], p[2]}, {p[3], p[4], p[5]}), 5e-5,
             "Sharma, Wu, Dalal 2005, table 1");
  }
  for (size_t i = 0; i < tables::wool_dyeings.size(); ++i) {
    const auto& [r, ks] = tables::wool_dyeings[i];
    // R is printed to three decimals: half a unit there is what K/S may differ by.
    const double rounding = std::abs(k_over_s(r - 5e-4) - k_over_s(r + 5e-4)) / 2 + 5e-4;
    rows.add("kubelka_munk.forward." + std::to_string(i + 1), ks, k_over_s(r), rounding,
             "Wilmsmann, J Soc Cosmet Chem 11:560 (1960)");
    const double back = std::abs(r_infinity(ks - 5e-4) - r_infinity(ks + 5e-4)) / 2 + 5e-4;
    rows.add("kubelka_munk.back." + std::to_string(i + 1), r, r_infinity(ks), back,
             "Wilmsmann, J Soc Cosmet Chem 11:560 (1960)");
  }
}

}  // namespace strandline
