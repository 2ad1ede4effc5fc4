// A small shelf of every class, and the ways over it.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/tests/support.h"
#include "strandline/route.h"

namespace strandline::testing_support {

inline Product tube(const std::string& id, const std::string& range, ProductClass cls) {
  Product p;
  p.id = id;
  p.range = range;
  p.name = id;
  p.cls = cls;
  p.stock_g = 500;
  p.fully_declared = true;
  return p;
}

// Tints, a weak demi with cool shades, a lightener, a remover, a warm filler, a softener and a chelating treatment.
inline Shelf whole_shelf() {
  Shelf s = small_shelf(7);
  for (double percent : {1.5, 9.0}) {
    Product d = tube("developer-" + std::to_string(percent), "", ProductClass::developer);
    d.peroxide_percent = percent;
    s.products.push_back(d);
  }
  Range demi = s.ranges[0];
  demi.id = "demi", demi.cls = ProductClass::demi, demi.reference = ReferenceProcess{1.5, 2, 20}, demi.ratios = {2};
  demi.developer_percents = {1.5}, demi.minutes = {5, 20, 20}, demi.alkaline_lift = 0.15;
  Range lift = demi;
  lift.id = "lightener-off-scalp", lift.cls = ProductClass::lightener, lift.reference = ReferenceProcess{6, 2, 40},
  lift.alkaline_lift = 1;
  lift.developer_percents = {1.5, 3, 6, 9}, lift.minutes = {15, 30, 45};
  Range remover = demi;
  remover.id = "remover", remover.cls = ProductClass::remover, remover.reference = ReferenceProcess{0, 1, 20},
  remover.developer_percents = {};
  remover.minutes = {10, 20, 20};
  Range soft = demi;
  soft.id = "soft", soft.cls = ProductClass::pre_treatment, soft.reference = ReferenceProcess{6, 1, 15},
  soft.ratios = {1};
  soft.developer_percents = {6}, soft.minutes = {10, 15, 20}, soft.alkaline_lift = 1;
  Range bind = remover;
  bind.id = "bind", bind.cls = ProductClass::pre_treatment, bind.reference = ReferenceProcess{0, 0, 10},
  bind.ratios = {0};
  bind.minutes = {5, 10, 15};
  s.ranges.insert(s.ranges.end(), {demi, lift, remover, soft, bind});
  for (int level : {6, 7, 8, 9, 10})
    for (const double blue : {0.0, 0.03, 0.08}) {
      Product p = tube("demi-" + std::to_string(level) + "-" + std::to_string(blue), "demi", ProductClass::demi);
      p.level = level;
      p.tone = blue > 0 ? Tone::ash : Tone::natural;
      p.swatch = dyed_white(level, Tone::natural, blue, ProductClass::demi);
      s.products.push_back(p);
    }
  s.products.push_back(tube("powder", "lightener-off-scalp", ProductClass::lightener));
  s.products.push_back(tube("remover", "remover", ProductClass::remover));
  s.products.push_back(tube("softener", "soft", ProductClass::pre_treatment));
  s.products.push_back(tube("mineral-remover", "bind", ProductClass::pre_treatment));
  Product warm = tube("warm-ground", "demi", ProductClass::filler);
  Fibre gold;
  for (int b = 0; b < kBands; ++b) gold.dye[b] = 1.2 * std::exp(-(band_nm(b) - 400) / 70.0);
  warm.swatch = reflectance(optical_depth(gold, pigments(Constants{})));
  s.products.push_back(warm);
  return s;
}

inline Head lengths(ColourOrigin origin, double level, double from = 3) {
  Head h;
  Span s = span("lengths", from, from + 8, 0, level);
  s.populations[0].origin = origin;
  if (origin != ColourOrigin::natural) s.populations[0].natural_level = Reading{std::min(level, 6.0), 0.3};
  h.areas.push_back(area("crown", AreaKind::crown, 200, {s}));
  return h;
}

struct Ways {
  Plan direct;
  std::vector<Route> routes;
  const Route* find(const std::string& kind) const {
    for (const Route& r : routes)
      if (r.kind == kind) return &r;
    return nullptr;
  }
};

inline Ways ways_for(const Head& head, double level, Tone tone = Tone::natural, FormulaPolicy policy = {}) {
  const Shelf shelf = whole_shelf();
  ZoneAim wish;
  wish.zone = "*", wish.level = level, wish.tone = tone;
  const auto targets = aim(head, {wish}, shelf);
  const auto direct = formulate(head, *targets, shelf, policy);
  EXPECT_TRUE(direct) << (direct ? "" : direct.error().front().code);
  const auto found = routes(head, *targets, shelf, policy, *direct);
  EXPECT_TRUE(found);
  return {*direct, *found};
}

inline double planned_level(const std::vector<ZonePlan>& zones) { return zones.front().result.planned.named.level; }

}  // namespace strandline::testing_support
