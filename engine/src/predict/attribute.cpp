#include "predict/attribute.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "predict/view.h"

namespace strandline {
namespace {

constexpr int kScenarios =
    48;  // one source moves a handful of numbers; a Latin hypercube of this size meets each evenly

double variance(const std::vector<double>& v) {
  double mean = 0, sum = 0;
  for (double x : v) mean += x / static_cast<double>(v.size());
  for (double x : v) sum += (x - mean) * (x - mean);
  return sum / static_cast<double>(v.size());
}

double lightness_variance(ZoneDraws zone, const std::vector<ReadyStep>& steps, const Draws& draws) {
  apply(steps, zone, draws);
  std::vector<double> l;
  for (size_t s = 0; s < zone.scenarios.size(); ++s)
    l.push_back(view(zone.scenarios[s], zone.kinds, draws.constants[s]).lab.l);
  return variance(l);
}

}  // namespace

Problems doubt_reasons(const std::vector<DoubtShare>& doubt) {
  constexpr double kWorthSaying = 1.0 / 3;
  Problems reasons;
  for (size_t i = 0; i < std::min<size_t>(doubt.size(), 2); ++i) {
    if (i > 0 && doubt[i].share < kWorthSaying) break;
    reasons.push_back(
        {std::string(code(doubt[i].source)), "", {{"percent", std::to_string(std::lround(100 * doubt[i].share))}}});
  }
  return reasons;
}

std::vector<ZoneDoubt> attribute(const Head& head, const std::vector<ReadyStep>& steps, const ParallelFor& parallel) {
  constexpr double kNothing = 1e-12;  // L*²
  std::vector<ZoneDoubt> out;
  for (const ZoneRef& z : zones(head)) out.push_back({z.id, {}});
  std::vector<std::array<double, kDoubtSources>> variances(out.size());
  for (int source = 0; source < kDoubtSources; ++source) {
    const Draws draws = draw(head, kScenarios, 1, static_cast<DoubtSource>(source));
    parallel(static_cast<int>(out.size()), [&](int begin, int end) {
      for (int z = begin; z < end; ++z)
        variances[static_cast<size_t>(z)][static_cast<size_t>(source)] =
            lightness_variance(draws.zones[static_cast<size_t>(z)], steps, draws);
    });
  }
  for (size_t z = 0; z < out.size(); ++z) {
    double total = 0;
    for (double v : variances[z]) total += v;
    if (total <= kNothing) continue;
    std::vector<DoubtShare>& shares = out[z].shares;
    for (int source = 0; source < kDoubtSources; ++source)
      shares.push_back({static_cast<DoubtSource>(source), variances[z][static_cast<size_t>(source)] / total});
    std::stable_sort(shares.begin(), shares.end(),
                     [](const DoubtShare& a, const DoubtShare& b) { return a.share > b.share; });
  }
  return out;
}

Result<std::vector<ZoneDoubt>> doubt_of(const Head& head, const std::vector<Step>& steps, const Shelf& shelf,
                                        const ParallelFor& parallel) {
  return prepared(steps, shelf, draw(head, 1)).map([&](const std::vector<ReadyStep>& ready) {
    return attribute(head, ready, parallel);
  });
}

}  // namespace strandline
