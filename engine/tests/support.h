// Small heads and a small shelf for tests, in plain words.
#pragma once

#include <cmath>

#include "strandline/fibre.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/pipeline.h"
#include "strandline/promise.h"
#include "strandline/treatment.h"

namespace strandline::testing_support {

inline Population pigmented(double share, double level) {
  Population p;
  p.name = "pigmented";
  p.share = {share, 0};
  p.level = {level, 0.35};
  return p;
}

inline Population white(double share) {
  Population p;
  p.name = "white";
  p.kind = FibreKind::white;
  p.share = {share, share > 0 ? 0.05 : 0};
  return p;
}

inline Span span(const std::string& id, double from, double to, double white_share, double level) {
  Span s;
  s.id = id;
  s.from_cm = from;
  s.to_cm = to;
  s.populations.push_back(pigmented(1 - white_share, level));
  if (white_share > 0) s.populations.push_back(white(white_share));
  return s;
}

inline Area area(const std::string& id, AreaKind kind, double cm2, std::vector<Span> spans) {
  Area a;
  a.id = id;
  a.kind = kind;
  a.scalp_cm2 = cm2;
  a.spans = std::move(spans);
  return a;
}

inline Head two_areas() {
  Head h;
  h.areas.push_back(area("front hairline", AreaKind::front_hairline, 90, {span("regrowth", 0, 1.8, 0.8, 5)}));
  h.areas.push_back(area("crown", AreaKind::crown, 250, {span("regrowth", 0, 1.8, 0.2, 5)}));
  return h;
}

inline Spectrum dyed_white(double level, Tone tone, double blue = 0, ProductClass cls = ProductClass::permanent) {
  // White hair after a shade that keeps its name's promise, moved by some blue.
  Spectrum tau = optical_depth(Fibre{}, pigments(Constants{}));
  const Spectrum load = promised_load(cls, level, tone, Constants{});
  for (int b = 0; b < kBands; ++b) tau[b] += load[b] + blue * std::exp(-(band_nm(b) - 600) * (band_nm(b) - 600) / 5000);
  return reflectance(tau);
}

inline Shelf small_shelf(int shades = 5) {
  Shelf s;
  s.id = "small";
  s.invented = true;
  Range r;
  r.id = "tint";
  r.maker = "nobody (invented)";
  r.name = "tint";
  r.reference = ReferenceProcess{6, 1, 35};
  r.ratios = {1};
  r.developer_percents = {3, 6};
  r.minutes = {25, 35, 45};
  s.ranges.push_back(r);
  for (int i = 0; i < shades; ++i) {
    Product p;
    p.id = "shade-" + std::to_string(i);
    p.range = "tint";
    p.name = std::to_string(4 + i) + " natural";
    p.level = 4 + i;
    p.swatch = dyed_white(4 + i, Tone::natural, i % 2 ? 0.05 : 0);
    p.stock_g = 300;
    p.price_per_g = 0.1;
    p.fully_declared = true;
    s.products.push_back(p);
  }
  for (double percent : {3.0, 6.0}) {
    Product d;
    d.id = "developer-" + std::to_string(static_cast<int>(percent));
    d.name = d.id;
    d.cls = ProductClass::developer;
    d.peroxide_percent = percent;
    d.stock_g = 1000;
    d.fully_declared = true;
    s.products.push_back(d);
  }
  return s;
}

}  // namespace strandline::testing_support
