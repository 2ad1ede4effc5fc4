#include "figures.h"

#include <array>
#include <cmath>
#include <cstdio>

#include "generated/tables.h"
#include "strandline/fade.h"
#include "strandline/kubelka_munk.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/treatment.h"

namespace strandline::figures {
namespace {

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

Lab colour(const Fibre& f) {
  static const Pigments p = pigments(Constants{});
  return lab(reflectance(optical_depth(f, p)), daylight());
}

std::string hex(const Lab& c) {
  const Srgb s = srgb(xyz(c, daylight().white), daylight().white);
  char text[8];
  auto byte = [](double v) { return static_cast<int>(std::lround(255 * std::fmin(1, std::fmax(0, v)))); };
  std::snprintf(text, sizeof text, "#%02x%02x%02x", byte(s.r), byte(s.g), byte(s.b));
  return text;
}

std::string one_decimal(double v) {
  char text[16];
  std::snprintf(text, sizeof text, "%.1f", v);
  return text;
}

double lightness(double r) {
  Spectrum s;
  s.fill(r);
  return lab(s, daylight()).l;
}

Chart curve() {
  Chart c{"Reflectance of a bed of fibres (M2)",
          {"optical depth across one fibre", 0.002, 10, {0.01, 0.1, 1, 10}, true},
          {"R", 0.02, 1, {0.02, 0.05, 0.1, 0.2, 0.5, 1}, true},
          {},
          {}};
  Line fitted{"stored curve", {}, {}}, km{"K–M, x = 17 τ", {}, {}, true}, transport{"transport", {}, {}, false, true};
  const double floor = Constants{}.bed_floor_sphere;
  for (double tau = 0.002; tau <= 10; tau *= 1.08) {
    fitted.x.push_back(tau), fitted.y.push_back(reflectance(tau));
    km.x.push_back(tau), km.y.push_back(floor + (1 - floor) * r_infinity(17 * tau));
  }
  for (size_t i = 1; i < tables::reflectance_curve.size(); i += 2)
    if (tables::reflectance_curve[i][0] <= 10)
      transport.x.push_back(tables::reflectance_curve[i][0]), transport.y.push_back(tables::reflectance_curve[i][1]);
  c.lines = {fitted, km, transport};
  return c;
}

Chart blends() {
  Chart c{"White fibres (τ 0.02) among pigmented (M5)",
          {"share of white", 0, 1, {0, 0.25, 0.5, 0.75, 1}},
          {"L*", 15, 75, {20, 30, 40, 50, 60, 70}},
          {},
          {}};
  const double m = Constants{}.blend_m;
  for (double tau : {0.12, 0.3, 0.8, 5.0}) {
    Line law{"τ " + one_decimal(tau) + (tau < 0.2 ? "2" : ""), {}, {}};
    for (double share = 0; share <= 1.0001; share += 0.05) {
      const double shares[] = {share, 1 - share}, r[] = {reflectance(0.02), reflectance(tau)};
      law.x.push_back(std::fmin(share, 1)), law.y.push_back(lightness(blend(shares, r, m)));
    }
    c.lines.push_back(law);
  }
  Line areal{"areal, τ 0.8", {}, {}, true};
  for (double share = 0; share <= 1.0001; share += 0.05) {
    areal.x.push_back(std::fmin(share, 1));
    areal.y.push_back(lightness(share * reflectance(0.02) + (1 - share) * reflectance(0.8)));
  }
  c.lines.push_back(areal);
  return c;
}

Chart lightening() {
  Chart c{"Lightening of level 3: what shows (M6)",
          {"exposure H", 0, 10, {0, 2, 4, 6, 8, 10}},
          {"L*, a*, b*", 0, 70, {0, 10, 20, 30, 40, 50, 60, 70}},
          {},
          {}};
  Line l{"L*", {}, {}}, a{"a*", {}, {}}, b{"b*", {}, {}};
  for (double h = 0; h <= 10.001; h += 0.25) {
    const Lab seen = colour(lightened(natural_fibre(3, Tone::natural), Treatment{.exposure = h}, Constants{}));
    for (Line* line : {&l, &a, &b}) line->x.push_back(std::fmin(h, 10));
    l.y.push_back(seen.l), a.y.push_back(seen.a), b.y.push_back(seen.b);
  }
  c.lines = {l, a, b};
  for (int i = 0; i < 10; ++i)
    c.cells.push_back(
        {static_cast<double>(i), 0,
         hex(colour(lightened(natural_fibre(3, Tone::natural), Treatment{.exposure = i + 0.5}, Constants{}))), "", 1,
         4});
  return c;
}

Chart lift_grid(double percent) {
  Chart c{"Level reached, " + one_decimal(percent) + " % at 1:1, full time (M6, M8)",
          {"natural level", 0.5, 7.5, {1, 2, 3, 4, 5, 6, 7}},
          {"shade above natural", -0.5, 4.5, {0, 1, 2, 3, 4}},
          {},
          {}};
  const Pigments p = pigments(Constants{});
  for (int natural = 1; natural <= 7; ++natural)
    for (int up = 0; up <= 4 && natural + up <= 10; ++up) {
      BowlChemistry bowl;
      bowl.peroxide_percent = percent / 2;
      bowl.minutes = bowl.reference_minutes = Constants{}.lift_full_minutes;
      const Spectrum shade = optical_depth(natural_fibre(natural + up, Tone::natural), p);
      for (int b = 0; b < kBands; ++b) bowl.load[b] = shade[b] - p.keratin[b];
      const Fibre f = natural_fibre(natural, Tone::natural);
      const Lab seen =
          colour(treated(f, treatment(bowl, 5, 15, Constants{}), selectivity(f, Constants{}), Constants{}));
      c.cells.push_back({natural - 0.5, up - 0.5, hex(seen), one_decimal(level_of_lightness(seen.l))});
    }
  return c;
}

Chart uptake_curves() {
  Chart c{"Dye taken up (M7)",
          {"minutes", 0, 60, {0, 10, 20, 30, 40, 50, 60}},
          {"share of the final uptake", 0, 1, {0, 0.25, 0.5, 0.75, 1}},
          {},
          {}};
  const Constants k;
  const double radius = k.fibre_diameter_um / 2 * 1e-6;
  const struct {
    const char* name;
    double d;
  } kinds[] = {{"permanent", k.diffusivity_permanent},
               {"porous by one", k.diffusivity_permanent * k.porosity_diffusion_factor},
               {"resistant white", k.diffusivity_permanent * k.resistant_diffusion_factor},
               {"demi", k.diffusivity_demi},
               {"direct", k.diffusivity_direct}};
  for (const auto& kind : kinds) {
    Line line{kind.name, {}, {}};
    for (double t = 0; t <= 60; t += 1) {
      line.x.push_back(t);
      line.y.push_back(cylinder_uptake(kind.d * t * 60 / (radius * radius)));
    }
    c.lines.push_back(line);
  }
  return c;
}

Chart fade_curves() {
  Chart c{"Dye left by washes, porosity 1 (M10)",
          {"washes", 0, 24, {0, 4, 8, 12, 16, 20, 24}},
          {"share left", 0, 1, {0, 0.25, 0.5, 0.75, 1}},
          {},
          {}};
  constexpr int kRedBand = 12, kBlueBand = 21;
  const struct {
    const char* name;
    ProductClass cls;
    int band;
  } kinds[] = {{"permanent, red", ProductClass::permanent, kRedBand},
               {"permanent, blue", ProductClass::permanent, kBlueBand},
               {"demi, red", ProductClass::demi, kRedBand},
               {"demi, blue", ProductClass::demi, kBlueBand},
               {"direct, blue", ProductClass::direct, kBlueBand}};
  for (const auto& kind : kinds) {
    Line line{kind.name, {}, {}};
    for (double n = 0; n <= 24; n += 0.5) {
      line.x.push_back(n);
      line.y.push_back(dye_left(kind.cls, kind.band, 1, n, 0, Constants{}));
    }
    c.lines.push_back(line);
  }
  return c;
}

// Natural hair by sphere: the path of the model, and what was measured.
Chart measured() {
  Chart c{"Natural hair: model and sphere readings (M1, M2)",
          {"b*", -2, 20, {0, 5, 10, 15, 20}},
          {"L*", 15, 70, {20, 30, 40, 50, 60, 70}},
          {},
          {}};
  Line model{"model, levels 1–10", {}, {}}, seen{"measured", {}, {}, false, true};
  for (double level = 1; level <= 10.001; level += 0.1) {
    const Lab l = colour(natural_fibre(std::fmin(level, 10), Tone::natural));
    model.x.push_back(l.b), model.y.push_back(l.l);
  }
  for (const auto& row : tables::natural_hair_sphere) seen.x.push_back(row[2]), seen.y.push_back(row[0]);
  c.lines = {model, seen};
  return c;
}

}  // namespace

std::map<std::string, Chart> all_figures() {
  return {{"reflectance", curve()},        {"blends", blends()},          {"lightening", lightening()},
          {"lift_grid_3", lift_grid(3)},   {"lift_grid_6", lift_grid(6)}, {"lift_grid_9", lift_grid(9)},
          {"lift_grid_12", lift_grid(12)}, {"uptake", uptake_curves()},   {"fade", fade_curves()},
          {"measured_hair", measured()}};
}

}  // namespace strandline::figures
