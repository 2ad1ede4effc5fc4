#include "predict/kernel.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "engine/tests/support.h"

namespace strandline {
namespace {

using namespace testing_support;

struct Case {
  Draws draws;
  BowlChemistry bowl;
  Target target;
};

Case any_case() {
  Head h;
  const double white = *rc::gen::element(0.0, 0.3, 0.9), level = *rc::gen::inRange(10, 100) / 10.0;
  h.areas.push_back(area("a", AreaKind::crown, 100, {span("s", 0, 3, white, level)}));
  h.areas[0].spans[0].porosity.value = *rc::gen::inRange(0, 300) / 100.0;
  Case c;
  c.draws = draw(h, *rc::gen::element(1, 5, 64, 100), *rc::gen::element(0.0, 1.0, 3.0));
  c.bowl.peroxide_percent = *rc::gen::inRange(0, 60) / 10.0;
  c.bowl.minutes = *rc::gen::inRange(0, 60);
  c.target.level = *rc::gen::inRange(10, 100) / 10.0;
  c.target.tone = static_cast<Tone>(*rc::gen::inRange(0, kTones));
  c.target.lab = colour_of(c.target.level, c.target.tone);
  return c;
}

Spectrum any_load() {
  Spectrum k;
  for (double& v : k) v = *rc::gen::inRange(0, 2000) / 1000.0;
  return k;
}

RC_GTEST_PROP(Kernel, AgreesWithTheDoubleRoutine, ()) {
  const Case c = any_case();
  const ZoneTable t = zone_table(c.draws.zones[0], c.bowl, c.draws);
  const ZoneLoss price = zone_loss(c.target, 1);
  const Spectrum load = any_load();
  std::vector<float> single(load.begin(), load.end());
  float fast = 0;
  mean_losses(t, price, single.data(), 1, &fast);
  RC_ASSERT(std::abs(fast - exact_mean_loss(t, price, load)) < 2e-4);
}

RC_GTEST_PROP(Kernel, DeltaEAgreesWithTheScalarFormula, ()) {
  const Case c = any_case();
  const ZoneTable t = zone_table(c.draws.zones[0], c.bowl, c.draws);
  const Spectrum load = any_load();
  std::vector<float> single(load.begin(), load.end());
  float fast = 0;
  mean_delta_e_2000(t, c.target.lab, single.data(), 1, &fast);
  double sum = 0;
  const auto all = colours(t, single.data());
  for (const ScenarioColour& s : all) sum += delta_e_2000(s.lab, c.target.lab);
  RC_ASSERT(std::abs(fast - sum / static_cast<double>(all.size())) < 5e-3);
}

RC_GTEST_PROP(Kernel, ReallyIsThePrediction, ()) {
  // The table's nominal colours are those of the slow path: fibres treated one by one.
  const Case c = any_case();
  const ZoneDraws& z = c.draws.zones[0];
  const ZoneTable t = zone_table(z, c.bowl, c.draws);
  BowlChemistry full = c.bowl;
  full.load = any_load();
  std::vector<float> single(full.load.begin(), full.load.end());
  const auto fast = colours(t, single.data());
  const Treatment tr = treatment(full, z.from_cm, z.to_cm, c.draws.constants[0]);
  std::vector<Spectrum> r;
  for (size_t p = 0; p < z.kinds.size(); ++p)
    r.push_back(reflectance(optical_depth(
        treated(z.scenarios[0].fibres[p], tr, selectivity(z.nominal.fibres[p], Constants{}), c.draws.constants[0]),
        pigments(c.draws.constants[0]))));
  const Lab slow = lab(blend(z.scenarios[0].shares, r, c.draws.constants[0].blend_m),
                       weights(Light::daylight, Observer::cie_1964_10deg));
  RC_ASSERT(delta_e_ab(slow, fast[0].lab) < 2e-3);
}

}  // namespace
}  // namespace strandline
