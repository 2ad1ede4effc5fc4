// Which constants of what hair becomes does anything from outside, or any cell of common practice, speak of?
#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <string>

#include "evidence/rows.h"
#include "strandline/fade.h"
#include "strandline/fibre.h"
#include "strandline/optics.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

// What rows compare with outside values or common practice, as plain functions of the constants, each in units of about
// the half-width of its row.
std::vector<double> told(const Constants& c) {
  std::vector<double> all = practice_misses(c);
  const Weights& w = weights(Light::daylight, Observer::cie_1964_10deg);
  const auto colour = [&](const Fibre& f) {
    const Lab seen = lab(reflectance(optical_depth(f, pigments(c))), w);
    all.insert(all.end(), {seen.l / 2, seen.a / 2, seen.b / 2});
  };
  // natural_hair.*: one share of pheomelanin, one amount a sample. white.*: as it is and after peroxide.
  for (const double melanin : {0.05, 0.37, 1.0, 2.1}) {
    Fibre f;
    f.pheomelanin = melanin * c.pheomelanin_share, f.eumelanin = melanin - f.pheomelanin;
    colour(f);
  }
  BowlChemistry strong;
  strong.peroxide_percent = 6, strong.minutes = strong.reference_minutes = 60;
  const Treatment t = treatment(strong, 5, 15, c);
  colour(Fibre{});
  colour(lightened(Fibre{}, t, c));
  // damage.*, blend.*, black.*, growth.*, fade.*
  all.push_back(std::pow(c.porosity_diffusion_factor, t.wear));
  all.insert(all.end(), {c.blend_m / 0.03, c.bed_floor_sphere / 0.002, c.bed_floor_average_45_0 / 0.002,
                         c.growth_mm_per_month / 2.5});
  for (const double red : {0.0, 1.0})
    for (const double hours : {0.0, 16.0}) all.push_back(10 * dye_left(ProductClass::permanent, red, 1, 8, hours, c));
  return all;
}

// Of hair: what a fibre holds, takes, loses. Prices, amounts, minutes and spreads of readings are nobody's nature: they
// are choices of the trade and of the house, and the grams have their own rows of practice.
bool of_hair(const ConstantInfo& info) {
  const std::string_view file = info.file;
  for (const char* folder : {"/pigments/", "/fibre/", "/lightening/", "/uptake/", "/fade/", "/growth/", "/condition/"})
    if (file.find(folder) != std::string_view::npos) return true;
  return info.member == &Constants::blend_m;
}

// The same list stands in docs/model.md.
const std::set<std::string> kPinnedByNothing = {"bed_blend_m",
                                                "bed_floor_across_45_0",
                                                "bed_floor_along_45_0",
                                                "bed_floor_sphere_excluded",
                                                "bed_shift_average_45_0",
                                                "bed_shift_sphere_excluded",
                                                "capacity_tau",
                                                "damp_dilution",
                                                "diffusivity_direct",
                                                "fade_fast_washes",
                                                "fade_lost_demi",
                                                "fade_lost_direct",
                                                "fade_porosity_factor",
                                                "fade_slow_factor_direct",
                                                "fade_visible_delta_e",
                                                "line_least_levels",
                                                "line_level_cm",
                                                "line_levels_per_tone_unit",
                                                "porosity_lift_factor",
                                                "reflectance_e_inf",
                                                "remover_exposure",
                                                "resistant_diffusion_factor",
                                                "scalp_heat_factor",
                                                "scalp_heat_reach_cm",
                                                "softening_per_exposure",
                                                "usual_minutes_remover",
                                                "usual_ratio_high_lift"};

TEST(Pinned, EveryConstantOfHairMovesAnOutsideOrPracticeRowOrIsListed) {
  const std::vector<double> nominal = told(Constants{});
  constexpr double kMoves = 0.01, kShare = 0.1;
  std::set<std::string> unpinned;
  for (const ConstantInfo& info : constant_infos) {
    if (!of_hair(info)) continue;
    Constants c;
    double& value = c.*info.member;
    const double step = info.sd > 0 ? info.sd : kShare;
    value = info.log_spread ? value * std::exp(step) : info.sd > 0 ? value + step : value * (1 + step);
    const std::vector<double> moved = told(c);
    double most = 0;
    for (size_t i = 0; i < moved.size(); ++i) most = std::max(most, std::abs(moved[i] - nominal[i]));
    if (!(most >= kMoves)) unpinned.insert(info.key);
  }
  EXPECT_EQ(unpinned, kPinnedByNothing);
}

}  // namespace
}  // namespace strandline
