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

// The sources that make up most of the doubt: the first always, the second where it is a third or more.
void say_most(const std::string& zone, const std::vector<DoubtShare>& shares, Problems& notes) {
  constexpr double kWorthSaying = 1.0 / 3;
  for (size_t i = 0; i < 2; ++i) {
    if (i > 0 && shares[i].share < kWorthSaying) break;
    notes.push_back({std::string(code(shares[i].source)),
                     "",
                     {{"zone", zone}, {"percent", std::to_string(std::lround(100 * shares[i].share))}}});
  }
}

}  // namespace

void attribute(const Head& head, const std::vector<ReadyStep>& steps, const ParallelFor& parallel,
               Prediction& prediction) {
  constexpr double kNothing = 1e-12;  // L*²
  const int zones = static_cast<int>(prediction.zones.size());
  std::vector<std::array<double, kDoubtSources>> variances(prediction.zones.size());
  for (int source = 0; source < kDoubtSources; ++source) {
    const Draws draws = draw(head, kScenarios, 1, static_cast<DoubtSource>(source));
    parallel(zones, [&](int begin, int end) {
      for (int z = begin; z < end; ++z)
        variances[static_cast<size_t>(z)][static_cast<size_t>(source)] =
            lightness_variance(draws.zones[static_cast<size_t>(z)], steps, draws);
    });
  }
  for (size_t z = 0; z < prediction.zones.size(); ++z) {
    double total = 0;
    for (double v : variances[z]) total += v;
    if (total <= kNothing) continue;
    std::vector<DoubtShare>& shares = prediction.zones[z].doubt;
    for (int source = 0; source < kDoubtSources; ++source)
      shares.push_back({static_cast<DoubtSource>(source), variances[z][static_cast<size_t>(source)] / total});
    std::stable_sort(shares.begin(), shares.end(),
                     [](const DoubtShare& a, const DoubtShare& b) { return a.share > b.share; });
    say_most(prediction.zones[z].zone, shares, prediction.notes);
  }
}

}  // namespace strandline
