// predict.ns: one recipe, zone and scenario, from spectra to CIEDE2000; its rival is the same in scalar double
// precision.
#include "engine/src/predict/kernel.h"
#include "measure.h"
#include "strandline/fibre.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/predict.h"

namespace {

using namespace strandline;

Head one_zone() {
  Population pigmented, white;
  pigmented.name = "pigmented", pigmented.share = {0.7, 0.05};
  white.name = "white", white.kind = FibreKind::white, white.share = {0.3, 0.05};
  Span span;
  span.id = "regrowth", span.to_cm = 2, span.populations = {pigmented, white};
  Area area;
  area.id = "crown", area.spans = {span};
  Head head;
  head.areas = {area};
  return head;
}

// The same colours the slow way: every band of every scenario through the plain functions.
double scalar_mean(const ZoneTable& t, const Lab& target, const Spectrum& load) {
  const Weights& w = weights(Light::daylight, Observer::cie_1964_10deg);
  const size_t n = static_cast<size_t>(t.scenarios);
  double sum = 0;
  for (size_t s = 0; s < n; ++s) {
    Spectrum mixed;
    for (int b = 0; b < kBands; ++b) {
      double shares[2], r[2];
      for (size_t p = 0; p < 2; ++p) {
        const size_t row = p * kBands + static_cast<size_t>(b);
        shares[p] = t.exact_share[p * n + s];
        r[p] = reflectance(t.exact_base[row * n + s] + t.exact_uptake[p * n + s] * t.exact_prefer[row] * load[b]);
      }
      mixed[b] = blend(shares, r, t.exact_m[s]);
    }
    sum += delta_e_2000(lab(mixed, w), target);
  }
  return sum / static_cast<double>(n);
}

}  // namespace

int main() {
  const Head head = one_zone();
  const Draws draws = draw(head, kSearchScenarios);
  BowlChemistry bowl;
  bowl.peroxide_percent = 3, bowl.minutes = 35;
  const ZoneTable table = zone_table(draws.zones[0], bowl, draws);
  const Lab target = colour_of(6, Tone::natural);
  constexpr int kRecipes = 4096, kRuns = 9, kSlow = 64;
  std::vector<float> loads(kRecipes * kBands), out(kRecipes);
  for (size_t i = 0; i < loads.size(); ++i) loads[i] = 0.05f + 0.0001f * static_cast<float>(i % 7919);
  const double fast =
      scoreboard::median_ms(kRuns, [&] { mean_delta_e_2000(table, target, loads.data(), kRecipes, out.data()); });
  double keep = 0;
  const double slow = scoreboard::median_ms(5, [&] {
    for (int i = 0; i < kSlow; ++i) {
      Spectrum load;
      for (int b = 0; b < kBands; ++b) load[b] = static_cast<double>(loads[static_cast<size_t>(i * kBands + b)]);
      keep += scalar_mean(table, target, load);
    }
  });
  const double ns = 1e6 * fast / (kRecipes * kSearchScenarios), scalar_ns = 1e6 * slow / (kSlow * kSearchScenarios);
  scoreboard::print(
      {{"predict.ns", ns, "ns", std::string("two populations, spectra to dE00, one core, ") + kernel_target()},
       {"predict.vs_scalar", scalar_ns / ns, "ratio", keep > 0 ? "plain double routine over kernel, same run" : ""}});
}
