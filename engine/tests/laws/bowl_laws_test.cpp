// Laws of a bowl on a head, whatever the bowl and the head: physics, not the trade.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "engine/tests/support.h"
#include "strandline/predict.h"

namespace strandline {
namespace {

using namespace testing_support;

constexpr int kShades = 5;

double any(int low, int high, double unit) { return *rc::gen::inRange(low, high + 1) * unit; }
std::string any_shade() { return "shade-" + std::to_string(*rc::gen::inRange(0, kShades)); }

Shelf shelf_with_clear() {
  Shelf s = small_shelf(kShades);
  Product clear;
  clear.id = clear.name = "clear";
  clear.range = "tint";
  clear.cls = ProductClass::clear;
  clear.swatch = reflectance(optical_depth(Fibre{}, pigments(Constants{})));
  clear.stock_g = 300;
  s.products.push_back(clear);
  return s;
}

Head any_head() {
  Head h;
  Span s = span("lengths", 4, 12, any(0, 100, 0.01), any(20, 90, 0.1));
  s.porosity = {any(0, 30, 0.1), 0.3};
  s.resistance = any(0, 10, 0.1);
  h.areas.push_back(area("top", AreaKind::top, 200, {s}));
  return h;
}

Formula any_bowl() {
  Formula f;
  f.range = "tint";
  f.parts = {{any_shade(), any(5, 40, 1)},
             {any_shade(), any(5, 40, 1)},
             {*rc::gen::arbitrary<bool>() ? "developer-3" : "developer-6", any(10, 80, 1)}};
  f.minutes = any(0, 60, 1);
  f.damp_hair = *rc::gen::arbitrary<bool>();
  return f;
}

ZoneResult after(const Head& head, const Formula& f) {
  PredictOptions few;
  few.scenarios = 4;
  const auto p = predict(head, {{f, {"top/lengths"}}}, shelf_with_clear(), {}, few);
  RC_ASSERT(p.has_value());
  return p->zones[0];
}

void same(const ZoneColour& a, const ZoneColour& b) { RC_ASSERT(delta_e_ab(a.lab, b.lab) < 1e-9); }

RC_GTEST_PROP(BowlLaws, EveryReflectanceLiesBetweenNoneAndAll, ()) {
  const ZoneResult z = after(any_head(), any_bowl());
  for (const ZoneColour* c : {&z.today, &z.planned})
    for (double r : c->reflectance) RC_ASSERT(r > 0 && r < 1);
}

RC_GTEST_PROP(BowlLaws, PermutingPartsChangesNothing, ()) {
  const Head head = any_head();
  const Formula f = any_bowl();
  Formula turned = f;
  std::rotate(turned.parts.begin(), turned.parts.begin() + *rc::gen::inRange(1, 3), turned.parts.end());
  same(after(head, f).planned, after(head, turned).planned);
}

RC_GTEST_PROP(BowlLaws, AShadeMixedWithItselfIsItself, ()) {
  const Head head = any_head();
  Formula whole = any_bowl();
  whole.parts[1].product = whole.parts[0].product;
  Formula one = whole;
  one.parts[0].grams += one.parts[1].grams;
  one.parts.erase(one.parts.begin() + 1);
  same(after(head, whole).planned, after(head, one).planned);
}

RC_GTEST_PROP(BowlLaws, TwiceTheBowlIsTheSameBowl, ()) {
  const Head head = any_head();
  const Formula f = any_bowl();
  Formula twice = f;
  for (Part& p : twice.parts) p.grams *= 2;
  same(after(head, f).planned, after(head, twice).planned);
}

RC_GTEST_PROP(BowlLaws, ZeroMinutesChangeNothing, ()) {
  const Head head = any_head();
  Formula f = any_bowl();
  f.minutes = 0;
  const ZoneResult z = after(head, f);
  same(z.today, z.planned);
  RC_ASSERT(z.deposit == 0 && z.exposure == 0);
}

RC_GTEST_PROP(BowlLaws, PermutingOrSplittingPopulationsChangesNothing, ()) {
  const Head head = any_head();
  const Formula f = any_bowl();
  Head turned = head;
  std::vector<Population>& all = turned.areas[0].spans[0].populations;
  std::reverse(all.begin(), all.end());
  same(after(head, f).planned, after(turned, f).planned);
  Population half = all[0];
  half.name = "the other half";
  all[0].share.value /= 2, half.share.value /= 2;
  all.push_back(half);
  same(after(head, f).planned, after(turned, f).planned);
}

RC_GTEST_PROP(BowlLaws, AllWhiteOrNoWhiteIsThatPopulationAlone, ()) {
  Head head = any_head();
  std::vector<Population>& all = head.areas[0].spans[0].populations;
  all = {pigmented(1, any(20, 90, 0.1)), white(0)};
  const Formula f = any_bowl();
  const ZoneColour mixed = after(head, f).planned;
  all.pop_back();
  same(mixed, after(head, f).planned);
}

RC_GTEST_PROP(BowlLaws, ClearWithoutPeroxideOnlyDilutes, ()) {
  const Head head = any_head();
  Formula f = any_bowl();
  f.parts.pop_back();
  Formula diluted = f;
  diluted.parts.push_back({"clear", any(1, 60, 1)});
  const ZoneResult full = after(head, f), less = after(head, diluted);
  RC_ASSERT(less.deposit <= full.deposit + 1e-12 && less.exposure == 0);
  RC_ASSERT(less.planned.lab.l >= full.planned.lab.l - 1e-9);
  f.parts = {{"clear", 30}};
  const ZoneResult alone = after(head, f);
  same(alone.today, alone.planned);
}

RC_GTEST_PROP(BowlLaws, LongerLiftsTheOwnPigmentNoLess, ()) {
  const Head head = any_head();
  Formula f = any_bowl(), longer = f;
  longer.minutes = f.minutes + any(1, 30, 1);
  const ZoneResult a = after(head, f), b = after(head, longer);
  RC_ASSERT(b.exposure >= a.exposure && b.lift_levels >= a.lift_levels - 1e-9);
}

}  // namespace
}  // namespace strandline
