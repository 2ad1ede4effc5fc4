// Do the stated ranges hold a truth that the engine did not make? (M13)
#include <algorithm>
#include <cmath>

#include "evidence/rows.h"
#include "evidence/truth.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/levels.h"

namespace strandline {
namespace {

constexpr int kZones = 2400, kScenarios = 128;
constexpr std::uint64_t kSeed = 20261125;
const Basis& source() {
  static const Basis basis = simulated("simulated truth of its own code: 2400 zones, seed 20261125");
  return basis;
}

Span span_of(const truth::Known& k) {
  const Constants c;
  Span s;
  s.id = "span";
  s.from_cm = k.from_cm, s.to_cm = k.to_cm;
  s.porosity = {k.porosity, c.reading_porosity_sd};
  Population pigmented;
  pigmented.share = {1 - k.white_share, 0};
  pigmented.level = {k.level, c.reading_level_sd};
  s.populations = {pigmented};
  if (k.white_share > 0) {
    Population white;
    white.kind = FibreKind::white;
    white.share = {k.white_share, c.reading_white_sd_percent / 100};
    s.populations.push_back(white);
  }
  return s;
}

Head head_of(const truth::Known& k) {
  Head head;
  head.areas.resize(1);
  head.areas[0].id = "area";
  head.areas[0].spans = {span_of(k)};
  return head;
}

// The bowl's range with one shade and one bottle.
Shelf shelf_of(const truth::Known& k) {
  Shelf shelf;
  Range r;
  r.id = r.maker = "r";
  const bool demi = k.kind == truth::Kind::demi;
  r.cls = k.kind == truth::Kind::lightener ? ProductClass::lightener
          : demi                           ? ProductClass::demi
                                           : ProductClass::permanent;
  r.reference = demi ? ReferenceProcess{1.5, 2, 20} : ReferenceProcess{6, 1, 35};
  r.alkaline_lift = demi ? 0.15 : 1;
  shelf.ranges = {r};
  Product shade, developer;
  shade.id = "s", shade.range = "r", shade.cls = r.cls;
  if (k.kind != truth::Kind::lightener) shade.swatch = k.swatch;
  developer.id = "d", developer.cls = ProductClass::developer, developer.peroxide_percent = k.bottle_percent;
  shelf.products = {shade, developer};
  return shelf;
}

struct Range90 {
  double low = 0, high = 0;
  bool holds(double x) const { return x >= low && x <= high; }
};

// The middle `share` of the scenarios, ends interpolated.
Range90 middle(std::vector<double> v, double share) {
  std::sort(v.begin(), v.end());
  auto at = [&](double q) {
    const double i = std::clamp(q * static_cast<double>(v.size()) - 0.5, 0.0, static_cast<double>(v.size() - 1));
    const auto k = static_cast<size_t>(i);
    const double w = i - static_cast<double>(k);
    return k + 1 < v.size() ? (1 - w) * v[k] + w * v[k + 1] : v[k];
  };
  return {at((1 - share) / 2), at((1 + share) / 2)};
}

struct Stated {
  Range90 l, a, b, l80;
};

Stated stated(const truth::Known& k) {
  Draws draws = draw(head_of(k), kScenarios);
  Formula formula;
  formula.range = "r";
  formula.parts = {{"s", 30}, {"d", 30 * k.ratio}};
  formula.minutes = k.minutes;
  ZoneDraws& zone = draws.zones[0];
  if (const auto bowl = chemistry(formula, shelf_of(k))) apply(*bowl, zone, draws);
  std::vector<double> l, a, b;
  for (size_t s = 0; s < zone.scenarios.size(); ++s) {
    const Lab c = view(zone.scenarios[s], zone.kinds, draws.constants[s]).lab;
    l.push_back(c.l), a.push_back(c.a), b.push_back(c.b);
  }
  return {middle(l, 0.9), middle(a, 0.9), middle(b, 0.9), middle(l, 0.8)};
}

struct Hits {
  int zones = 0, l = 0, a = 0, b = 0, l80 = 0;
  std::vector<double> width;
  double share(int n) const { return static_cast<double>(n) / std::max(zones, 1); }
};

void count(Hits& h, const Stated& s, const Lab& truth) {
  ++h.zones;
  h.l += s.l.holds(truth.l), h.a += s.a.holds(truth.a), h.b += s.b.holds(truth.b), h.l80 += s.l80.holds(truth.l);
  h.width.push_back(level_of_lightness(s.l.high) - level_of_lightness(s.l.low));
}

}  // namespace

void coverage_rows(Rows& rows) {
  Hits all, by_kind[truth::kKinds];
  for (int i = 0; i < kZones; ++i) {
    const truth::Case c = truth::simulate(kSeed, i);
    const Stated s = stated(c.known);
    count(all, s, c.after);
    count(by_kind[static_cast<int>(c.known.kind)], s, c.after);
  }
  rows.within("coverage.lightness", 0.85, 0.95, all.share(all.l), source());
  rows.within("coverage.a", 0.85, 0.95, all.share(all.a), source());
  rows.within("coverage.b", 0.85, 0.95, all.share(all.b), source());
  rows.within("coverage.lightness.shown_10_90", 0.75, 0.88, all.share(all.l80), source());
  // One kind of bowl at a time the range may be a little less exact.
  const char* names[truth::kKinds] = {"tint", "lightener", "demi"};
  for (int k = 0; k < truth::kKinds; ++k)
    rows.within(std::string("coverage.lightness.") + names[k], 0.8, 0.98, by_kind[k].share(by_kind[k].l), source());
  // A range that holds everything says nothing: half of them are narrower than this.
  std::nth_element(all.width.begin(), all.width.begin() + kZones / 2, all.width.end());
  rows.within("coverage.median_width_levels", 0, 2.5, all.width[kZones / 2], source());
}

}  // namespace strandline
