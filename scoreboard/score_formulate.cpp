// formulate.robust.ms and its kin: the certified search for one bowl on invented heads and shelves, one core. Its rival
// is the vectorised enumeration of the same domain, nothing pruned: one full run, and every head's own speed from a
// sample.
#include <hwy/targets.h>

#include <cmath>

#include "engine/oracle/enumerate.h"
#include "one_zone.h"

namespace {

using namespace strandline;
using scoreboard::OneZone;

constexpr int kHeads = 20;

std::string text(double value) {
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%.3g", value);
  return buffer;
}

struct Runs {
  std::vector<double> ms;
  std::string target = kernel_target();
  double boxes = 0, evaluations = 0, worst_ms = 0;
  double median_ms() const { return scoreboard::median(ms); }
};

Runs search_heads(const Domain& domain, const Shelf& shelf, int heads, double doubt) {
  Runs r;
  for (int h = 0; h < heads; ++h) {
    const OneZone zone(static_cast<std::uint64_t>(h), shelf, doubt);
    const auto s = scoreboard::search_one(domain, zone);
    if (!s.list.complete) std::exit(1);
    r.ms.push_back(s.ms);
    r.worst_ms = std::max(r.worst_ms, s.ms);
    r.boxes += static_cast<double>(s.counts.boxes) / heads;
    r.evaluations += static_cast<double>(s.counts.evaluations) / kSearchScenarios / heads;
  }
  return r;
}

std::string note(const std::string& what, const Runs& r) {
  return what + "; worst " + text(r.worst_ms) + " ms; on average " + text(r.boxes / 1e3) + " thousand boxes and " +
         text(r.evaluations / 1e3) + " thousand recipes evaluated; " + r.target;
}

// As a processor without AVX-512 does it: most tablets and small computers.
Runs without_avx512(const std::function<Runs()>& run) {
  hwy::DisableTargets(HWY_AVX2 - 1);  // the better a target of its family, the lower its bit
  hwy::GetChosenTarget().DeInit();
  Runs r = run();
  r.target = kernel_target();
  hwy::DisableTargets(0);
  hwy::GetChosenTarget().DeInit();
  return r;
}

// Nanoseconds per recipe and scenario of the kernel on this head.
double sampled_ns(const Domain& domain, const OneZone& zone) {
  constexpr int kSample = 2048;
  const RecipeSet& set = domain.sets[0];
  const ZoneTable table = zone_table(
      zone.draws.zones[0], bare_chemistry(domain.settings[0].setting, domain.settings[0].setting.minutes), zone.draws);
  scoreboard::Seeded random(9);
  std::vector<float> loads, losses(kSample);
  const int n = static_cast<int>(set.products().size());
  for (int i = 0; i < kSample; ++i) {
    const int first = random.below(n - 2);
    const Shares s{{static_cast<short>(first), static_cast<short>(first + 1), static_cast<short>(first + 2)},
                   {3, 3, 2}};
    const Spectrum load = set.load(s, domain.settings[0].setting.ratio);
    for (double v : load) loads.push_back(static_cast<float>(v));
  }
  const double ms =
      scoreboard::median_ms(3, [&] { mean_losses(table, zone.zones[0].price, loads.data(), kSample, losses.data()); });
  return 1e6 * ms / kSample / kSearchScenarios;
}

}  // namespace

int main() {
  const FormulaPolicy policy;
  const Shelf shelf = scoreboard::invented_shelf(100, {3, 6, 9, 12}, {1});
  const Domain domain = strandline::domain(shelf, policy);
  const Runs robust = search_heads(domain, shelf, kHeads, 1);
  const Runs narrower = without_avx512([&] { return search_heads(domain, shelf, kHeads, 1); });
  const double recipes = static_cast<double>(domain.sets[0].size()) * static_cast<double>(domain.settings.size());

  // The rival, in full on one head.
  const OneZone zone(1, shelf);
  const auto found = scoreboard::search_one(domain, zone);
  Enumeration all;
  const double full_ms = scoreboard::median_ms(1, [&] {
    all =
        enumerate(domain, zone.zones, group_zones(zone.zones), zone.draws, 1, policy, {}, {{}, scoreboard::kMixGrams});
  });
  bool same = found.list.candidates.size() >= kKept;
  for (size_t i = 0; same && i < kKept; ++i)
    same = std::abs(found.list.candidates[i].objective - all.best[1][i].objective) < 1e-6;
  if (!same) return 1;
  const double full_ns = 1e6 * full_ms / static_cast<double>(all.evaluations);
  std::vector<double> enumeration_ms;
  for (int h = 0; h < kHeads; ++h)
    enumeration_ms.push_back(sampled_ns(domain, OneZone(static_cast<std::uint64_t>(h), shelf)) * recipes *
                             kSearchScenarios / 1e6);

  const Runs doubts = search_heads(domain, shelf, kHeads, 2);
  const Shelf many = scoreboard::invented_shelf(100, {1.5, 3, 4.5, 6, 7.5, 9, 10.5, 12}, {1, 1.5, 2});
  const Domain settings24 = strandline::domain(many, policy);
  const Runs settings = search_heads(settings24, many, 5, 1);
  scoreboard::print(
      {{"formulate.robust.ms", robust.median_ms(), "ms",
        note("100 shades, 4 strengths, " + text(recipes / 1e6) +
                 " million recipes, 64 scenarios, median of 20 heads, one core",
             robust)},
       {"formulate.robust.worst.ms", robust.worst_ms, "ms", "the slowest of these 20 heads"},
       {"formulate.robust.avx2.ms", narrower.median_ms(), "ms", note("the same without AVX-512", narrower)},
       {"formulate.robust.avx2.worst.ms", narrower.worst_ms, "ms", "the slowest of these 20 heads"},
       {"formulate.robust.vs_enumeration", scoreboard::median(enumeration_ms) / robust.median_ms(), "ratio",
        "medians of 20 heads; enumeration " + text(full_ns) + " ns per recipe and scenario in one full run of " +
            text(full_ms / 1e3) + " s (the same twelve found), the other heads from 2048 recipes each"},
       {"formulate.doubts2.ms", doubts.median_ms(), "ms", note("the same with every doubt doubled", doubts)},
       {"formulate.settings24.ms", settings.median_ms(), "ms",
        note(std::to_string(settings24.settings.size()) + " process settings, median of 5 heads", settings)}});
}
