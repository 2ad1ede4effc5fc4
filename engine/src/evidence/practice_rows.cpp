// What colourists agree on, cell by cell: shades known by their names, through the model's own equations (M18).
#include <string>

#include "evidence/rows.h"
#include "generated/tables.h"
#include "strandline/existing.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/promise.h"

namespace strandline {
namespace {

enum Column { hair, level, porosity, cls, shade, clear_share, percent, ratio, minutes, expected, half_width };

const char* const kHair[] = {"natural", "white", "tinted", "lightened"};
const char* const kClass[] = {"permanent", "demi", "lightener", "high_lift"};
constexpr ProductClass kClasses[] = {ProductClass::permanent, ProductClass::demi, ProductClass::lightener,
                                     ProductClass::high_lift};

std::string figure(double v) {
  std::string s = std::to_string(v);
  s.erase(s.find_last_not_of('0') + 1);
  if (s.back() == '.') s.pop_back();
  return s;
}

template <class Cell>
std::string name(const std::string& table, const Cell& c) {
  std::string id = table + "." + std::string(kHair[static_cast<int>(c[hair])]) + figure(c[level]);
  if (c[porosity] != 1) id += "_porous" + figure(c[porosity]);
  id += "." + std::string(kClass[static_cast<int>(c[cls])]);
  if (c[clear_share] == 1)
    id += "_clear";
  else if (c[shade] > 0)
    id += figure(c[shade]) + (c[clear_share] > 0 ? "_and_clear" : "");
  return id + "." + figure(c[percent]) + "_percent." + figure(c[minutes]) + "_min";
}

constexpr double kGrewAt = 6;  // what was lightened

Fibre as_read(double kind, double level, double porosity) {
  Population p;
  p.origin = kind == 2 ? ColourOrigin::tinted : kind == 3 ? ColourOrigin::lightened : ColourOrigin::natural;
  p.tone = kind == 3 ? Tone::gold : Tone::natural;
  if (kind == 1) p.kind = FibreKind::white;
  Fibre f = fibre_as_read(p, level, kind == 3 ? kGrewAt : level);
  f.porosity = porosity;
  return f;
}

Fibre after(const Fibre& f, const BowlChemistry& bowl, const Constants& c) {
  return treated(f, treatment(bowl, 5, 15, c), selectivity(f, c), c);
}

double level_seen(const Fibre& f, const Constants& c) {
  return level_of_lightness(
      lab(reflectance(optical_depth(f, pigments(c))), weights(Light::daylight, Observer::cie_1964_10deg)).l);
}

BowlChemistry named_bowl(ProductClass cls, double level, Tone tone, const Constants& c) {
  BowlChemistry bowl = usual_bowl(cls, c);
  bowl.load = promised_load(cls, level, tone, c);
  return bowl;
}

template <class Cell>
double reached(const Cell& c, const Constants& constants) {
  const ProductClass product = kClasses[static_cast<int>(c[cls])];
  BowlChemistry bowl = usual_bowl(product, constants);
  if (c[shade] > 0) bowl = named_bowl(product, c[shade], Tone::natural, constants);
  if (c[clear_share] > 0) bowl.load = thinned(bowl.load, 1 - c[clear_share]);
  bowl.peroxide_percent = c[percent] * c[ratio] / (1 + c[ratio]);
  bowl.minutes = c[minutes];
  return level_seen(after(as_read(c[hair], c[level], c[porosity]), bowl, constants), constants);
}

// Lightened hair filled with 7 copper, then taken to 5 with a demi.
double filled_then_demi(const Constants& c) {
  BowlChemistry filler = named_bowl(ProductClass::filler, 7, Tone::copper, c);
  filler.minutes = 15;
  const BowlChemistry demi = named_bowl(ProductClass::demi, 5, Tone::natural, c);
  return level_seen(after(after(as_read(3, 9.5, 2), filler, c), demi, c), c);
}

}  // namespace

std::vector<double> practice_misses(const Constants& c) {
  std::vector<double> all = {(filled_then_demi(c) - 5) / 0.6};
  const auto add = [&](const auto& cells) {
    for (const auto& cell : cells) all.push_back((reached(cell, c) - cell[expected]) / cell[half_width]);
  };
  add(tables::practice_cells);
  add(tables::practice_held_back);
  return all;
}

void practice_rows(Rows& rows) {
  const Constants nominal;
  rows.about("practice.lightened9.5_porous2.filler7_copper_then_demi5", 5, 0.6, filled_then_demi(nominal),
             practice("common practice"));
  for (const auto& cell : tables::practice_cells)
    rows.about(name("practice", cell), cell[expected], cell[half_width], reached(cell, nominal),
               practice("common practice, in the fit with its half-width as spread"));
  for (const auto& cell : tables::practice_held_back)
    rows.about(name("practice_held_back", cell), cell[expected], cell[half_width], reached(cell, nominal),
               practice("common practice, not in the fit"));
}

}  // namespace strandline
