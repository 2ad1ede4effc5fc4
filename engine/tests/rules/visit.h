// A visit that no rule speaks against, with one range of every class, for tests of the rules.
#pragma once

#include "engine/tests/cleared.h"
#include "engine/tests/support.h"
#include "strandline/rules.h"

namespace strandline::testing_support {

inline Range range_of(const std::string& id, ProductClass cls, std::vector<double> bottles, MinuteWindow minutes,
                      double alkaline_lift = 1) {
  Range r;
  r.id = r.name = id;
  r.maker = "nobody (invented)";
  r.cls = cls;
  r.ratios = {bottles.empty() ? 0.0 : 1.0};
  r.developer_percents = std::move(bottles);
  r.minutes = minutes;
  r.alkaline_lift = alkaline_lift;
  return r;
}

inline Shelf every_class() {
  Shelf s;
  s.ranges = {range_of("tint", ProductClass::permanent, {3, 6, 9}, {25, 35, 45}),
              range_of("high", ProductClass::high_lift, {9, 12}, {45, 50, 60}),
              range_of("demi", ProductClass::demi, {1.5, 3}, {5, 15, 20}, 0.2),
              range_of("acid", ProductClass::demi, {1.5}, {5, 15, 20}, 0.02),
              range_of("direct", ProductClass::direct, {}, {15, 25, 30}),
              range_of("bleach", ProductClass::lightener, {3, 6, 9}, {15, 30, 45}),
              range_of("clear", ProductClass::clear, {3}, {5, 10, 20}),
              range_of("filler", ProductClass::filler, {3}, {10, 15, 20}),
              range_of("soft", ProductClass::pre_treatment, {3, 6}, {5, 10, 15}),
              range_of("chelate", ProductClass::pre_treatment, {}, {5, 10, 15}),
              range_of("remover", ProductClass::remover, {}, {10, 15, 20})};
  for (const Range& r : s.ranges)
    for (const double level : {4.0, 6.0, 8.0}) {
      Product p;
      p.id = r.id + std::to_string(static_cast<int>(level));
      p.range = r.id;
      p.name = p.id;
      p.cls = r.cls;
      p.level = level;
      p.stock_g = 500;
      if (has_colour(p)) p.swatch = dyed_white(level, Tone::natural);
      p.fully_declared = true;
      s.products.push_back(p);
    }
  for (const ProductClass cls : {ProductClass::corrector, ProductClass::clear}) {
    Product p = s.products.front();
    p.id = p.name = cls == ProductClass::clear ? "tint-clear" : "tint-corrector";
    p.cls = cls;
    p.level = 0;
    if (!has_colour(p)) p.swatch.reset();
    s.products.push_back(p);
  }
  for (const double percent : {1.5, 3.0, 6.0, 9.0, 12.0}) {
    Product d;
    d.id = d.name = "dev" + std::to_string(static_cast<int>(percent * 10));
    d.cls = ProductClass::developer;
    d.peroxide_percent = percent;
    d.stock_g = 1000;
    d.fully_declared = true;
    s.products.push_back(d);
  }
  return s;
}

// Zones: "top/regrowth" 0–2 cm, "top/lengths" 2–25 cm, and packets out of the top, "lights/packets".
inline Visit quiet_visit() {
  Visit v;
  v.head.areas = {area("top", AreaKind::top, 200, {span("regrowth", 0, 2, 0, 6), span("lengths", 2, 25, 0, 6)}),
                  area("lights", AreaKind::top, 200, {span("packets", 0, 25, 0, 6)})};
  v.head.areas[1].woven = Weave{"top", 0.3, 4};
  v.shelf = every_class();
  ZoneAim wish;
  wish.zone = "*";
  wish.level = 6;
  v.aims = {wish};
  return cleared(v);
}

inline Span& regrowth(Visit& v) { return v.head.areas[0].spans[0]; }
inline Span& lengths(Visit& v) { return v.head.areas[0].spans[1]; }

inline Bowl bowl_of(const std::string& range, std::vector<Part> parts, double minutes,
                    const std::string& zone = "top/regrowth") {
  Bowl b;
  b.label = "A";
  b.formula = {range, std::move(parts), minutes, false};
  b.zones = {zone};
  return b;
}

}  // namespace strandline::testing_support
