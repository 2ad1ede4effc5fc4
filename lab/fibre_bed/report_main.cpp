// fibre_bed_report: what the committed files of knowledge/fibre say, beside Kubelka-Munk and measured hair.
#include <algorithm>
#include <cstdio>
#include <cstring>
#include <stdexcept>
#include <string>

#include "generated/constants.h"
#include "generated/tables.h"
#include "laws.h"
#include "lightness.h"

namespace strandline::fibre_bed {
namespace {

void print_curve() {
  const double floor = Constants{}.bed_floor_sphere;
  std::printf("R(tau), light at 8 degrees, all that returns. x is K/S of (R - floor)/(1 - floor), floor %.4f\n", floor);
  std::printf("%9s %9s %9s %9s %7s %8s %8s %12s\n", "tau", "R", "s.e.", "spread", "L*", "x", "x/tau", "K-M, x=17tau");
  for (const auto& row : tables::reflectance_curve) {
    const double tau = row[0], r = row[1], above = (r - floor) / (1 - floor);
    std::printf("%9.4f %9.5f %9.5f %9.5f %7.2f", tau, r, row[2], row[3], lightness(r));
    // Within three standard errors of the floor the difference says nothing.
    if (r - floor > 3 * row[2] && r < 1)
      std::printf(" %8.3f %8.1f", kubelka_munk(above), kubelka_munk(above) / tau);
    else
      std::printf(" %8s %8s", "-", "-");
    std::printf(" %12.5f\n", floor + (1 - floor) * kubelka_munk_reflectance(17 * tau));
  }
}

const ConstantInfo& info(const char* key) {
  for (const ConstantInfo& c : constant_infos)
    if (std::strcmp(c.key, key) == 0) return c;
  throw std::runtime_error(std::string("no constant ") + key);
}

// The law's L* beside the transported one, for one pair of fibres a line.
void print_blends() {
  const ConstantInfo& m = info("bed_blend_m");
  std::printf(
      "\nL* of white among pigmented fibres, transport over Stearns-Noechel with M %.3f (sd %.3f over "
      "beds)\n",
      m.value, m.sd);
  const auto& rows = tables::blend_curves;
  for (size_t first = 0; first < rows.size();) {
    size_t end = first;
    while (end < rows.size() && rows[end][0] == rows[first][0] && rows[end][1] == rows[first][1]) ++end;
    std::printf("white %.2f among %.2f\n  share    ", rows[first][0], rows[first][1]);
    for (size_t i = first; i < end; ++i) std::printf(" %6.2f", rows[i][2]);
    std::printf("\n  transport");
    for (size_t i = first; i < end; ++i) std::printf(" %6.1f", lightness(rows[i][3]));
    std::printf("\n  law      ");
    for (size_t i = first; i < end; ++i)
      std::printf(" %6.1f", lightness(blend_stearns_noechel(rows[i][2], rows[end - 1][3], rows[first][3], m.value)));
    std::printf("\n");
    first = end;
  }
}

void print_floor(const char* what, const char* key, const char* measured) {
  const ConstantInfo& c = info(key);
  std::printf("%-34s R %.4f sd %.4f  L* %4.1f (%4.1f to %4.1f)   %s\n", what, c.value, c.sd, lightness(c.value),
              lightness(std::max(0.0, c.value - c.sd)), lightness(c.value + c.sd), measured);
}

void print_floors() {
  std::printf("\nBlack by measuring geometry, and measured black hair\n");
  print_floor("sphere, specular included", "bed_floor_sphere",
              "17.3 (J Soc Cosmet Chem 46(4), 1995), 18.4 (Scanavez et al. 2000)");
  print_floor("sphere, specular excluded", "bed_floor_sphere_excluded",
              "18.0 (Scanavez et al. 2000, the tress of 18.4 above)");
  print_floor("45/0, averaged over the fibres", "bed_floor_average_45_0",
              "11.5 (45/45 on the head, Bohnert et al. 1998); 11.5-12.8 over sources");
  print_floor("45/0, across the fibres", "bed_floor_across_45_0", "-");
  print_floor("45/0, along the fibres", "bed_floor_along_45_0", "-");
}

}  // namespace
}  // namespace strandline::fibre_bed

int main() {
  try {
    strandline::fibre_bed::print_curve();
    strandline::fibre_bed::print_blends();
    strandline::fibre_bed::print_floors();
    return 0;
  } catch (const std::exception& e) {
    std::fprintf(stderr, "fibre_bed_report: %s\n", e.what());
    return 1;
  }
}
