#include "strandline/reach.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "formulate/enumerate.h"
#include "formulate/habits.h"

namespace strandline {
namespace {

// Colours of one zone in one scenario under many loads: lanes are loads, not scenarios.
class ManyLoads {
 public:
  explicit ManyLoads(ZoneTable table) : one_(std::move(table)), lanes_(one_) {
    lanes_.scenarios = one_.stride;
    std::fill(lanes_.uptake.begin(), lanes_.uptake.end(), 0.0F);
  }

  void add(const Spectrum& load, std::vector<ScenarioColour>& out) {
    const size_t stride = static_cast<size_t>(one_.stride);
    for (size_t p = 0; p < static_cast<size_t>(one_.populations); ++p)
      for (size_t b = 0; b < kBands; ++b) {
        const size_t row = p * kBands + b;
        lanes_.base[row * stride + filled_] =
            one_.base[row * stride] + one_.uptake[p * stride] * one_.prefer[row] * static_cast<float>(load[b]);
      }
    if (++filled_ == stride) flush(out);
  }
  void flush(std::vector<ScenarioColour>& out) {
    const std::vector<ScenarioColour> all = colours(lanes_, std::vector<float>(kBands, 0.0F).data());
    out.insert(out.end(), all.begin(), all.begin() + static_cast<long>(filled_));
    filled_ = 0;
  }

 private:
  ZoneTable one_, lanes_;
  size_t filled_ = 0;
};

// What one bowl of up to two shades can give this zone, nominal, from dark to light; what is there already too.
struct Palette {
  ScenarioColour bare;
  std::vector<ScenarioColour> all;
};

Palette palette(const ZoneRef& ref, const ZoneDraws& zone, const Draws& draws, const Domain& all,
                const FormulaPolicy& policy) {
  Palette out;
  out.all = colours(zone_table(zone, draws), std::vector<float>(kBands, 0.0F).data());
  out.bare = out.all.front();
  for (const Domain::OneSetting& one : all.settings) {
    if (!forbidden(one.setting, *ref.span, policy).empty()) continue;
    ManyLoads loads(zone_table(zone, bare_chemistry(one.setting), draws));
    const RecipeSet& set = all.sets[static_cast<size_t>(one.set)];
    for (const Shares& s : set.few()) loads.add(set.load(s, one.setting.ratio), out.all);
    loads.flush(out.all);
  }
  std::stable_sort(out.all.begin(), out.all.end(),
                   [](const ScenarioColour& a, const ScenarioColour& b) { return a.lab.l < b.lab.l; });
  return out;
}

// The colour that misses least. From the wished lightness outwards, as far as lightness alone does not miss by more.
const ScenarioColour& nearest(const std::vector<ScenarioColour>& all, const ZoneLoss& price) {
  const ScenarioColour* best = nullptr;
  double least = std::numeric_limits<double>::infinity();
  auto lighter = std::lower_bound(all.begin(), all.end(), price.target.l,
                                  [](const ScenarioColour& c, double l) { return c.lab.l < l; });
  auto darker = lighter;
  auto too_light = [&] { return lighter == all.end() || price.light * (lighter->lab.l - price.target.l) >= least; };
  auto too_dark = [&] {
    return darker == all.begin() || price.dark * (price.target.l - std::prev(darker)->lab.l) >= least;
  };
  auto look = [&](const ScenarioColour& c) {
    if (const double miss = loss(price, c.lab, c.contrast); miss < least) least = miss, best = &c;
  };
  while (!too_light() || !too_dark()) {
    if (!too_light()) look(*lighter++);
    if (!too_dark()) look(*--darker);
  }
  return *best;
}

ReachCell cell(double level, Tone tone, const Palette& palette, const ZoneRef& ref, const FormulaPolicy& policy) {
  ReachCell c;
  c.level = level;
  c.tone = tone;
  c.wished = colour_of(level, tone);
  Target target;
  target.lab = c.wished;
  target.level = level;
  target.tone = tone;
  SearchZone zone;
  zone.span = ref.span;
  zone.target = &target;
  const ZoneLoss price = zone_loss(target, policy.covered_contrast_levels);
  // What is tinted already stays as it is where lighter is wished.
  const ScenarioColour& best = asks_colour_to_lift_colour(zone) ? palette.bare : nearest(palette.all, price);
  const Constants k;
  c.nearest = best.lab;
  c.level_error = level_of_lightness(best.lab.l) - level;
  c.tone_error = std::hypot(best.lab.a - c.wished.a, best.lab.b - c.wished.b);
  c.contrast_levels = best.contrast * levels_per_lightness(std::clamp(level, level_lowest, level_highest));
  c.reachable = std::abs(c.level_error) <= k.level_tolerance && c.tone_error <= k.tone_tolerance &&
                best.contrast <= price.contrast_free;
  return c;
}

}  // namespace

Result<std::vector<ZoneReach>> reach(const Head& head, const Shelf& shelf, const FormulaPolicy& policy,
                                     const ParallelFor& parallel) {
  const Domain all = domain(shelf, policy);
  if (all.settings.empty()) return tl::unexpected(Problems{{"no_range_usable", "/shelf", {}}});
  const Draws draws = draw(head, 1, 0);
  const std::vector<ZoneRef> refs = zones(head);
  std::vector<ZoneReach> out(refs.size());
  parallel(static_cast<int>(refs.size()), [&](int begin, int end) {
    for (int z = begin; z < end; ++z) {
      const ZoneRef& ref = refs[static_cast<size_t>(z)];
      ZoneReach& r = out[static_cast<size_t>(z)];
      r.zone = ref.id;
      const Palette colours = palette(ref, draws.zones[static_cast<size_t>(z)], draws, all, policy);
      r.recipes = static_cast<long long>(colours.all.size());
      for (double level = level_lowest; level <= level_highest; level += 1)
        for (int tone = 0; tone < kTones; ++tone)
          r.cells.push_back(cell(level, static_cast<Tone>(tone), colours, ref, policy));
    }
  });
  return out;
}

}  // namespace strandline
