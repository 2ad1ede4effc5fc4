#include "strandline/reach.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "formulate/enumerate.h"
#include "formulate/habits.h"

namespace strandline {
namespace {

// Every colour one bowl of up to two shades can give this zone, nominal, with what is there already.
std::vector<ScenarioColour> palette(const ZoneRef& ref, const ZoneDraws& zone, const Draws& draws, const Domain& all,
                                    const FormulaPolicy& policy) {
  std::vector<ScenarioColour> out = colours(zone_table(zone, draws), std::vector<float>(kBands, 0.0F).data());
  for (const Domain::OneSetting& one : all.settings) {
    if (!forbidden(one.setting, *ref.span, policy).empty()) continue;
    const ZoneTable table = zone_table(zone, bare_chemistry(one.setting), draws);
    const RecipeSet& set = all.sets[static_cast<size_t>(one.set)];
    std::vector<float> load(kBands);
    for (const Shares& s : set.few()) {
      const Spectrum exact = set.load(s, one.setting.ratio);
      std::copy(exact.begin(), exact.end(), load.begin());
      out.push_back(colours(table, load.data()).front());
    }
  }
  return out;
}

ReachCell cell(double level, Tone tone, const std::vector<ScenarioColour>& palette, const ZoneRef& ref,
               const FormulaPolicy& policy) {
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
  // What is tinted already stays as it is where lighter is wished: the first colour of the palette.
  const size_t count = asks_colour_to_lift_colour(zone) ? 1 : palette.size();
  const ScenarioColour* best = nullptr;
  double least = std::numeric_limits<double>::infinity();
  for (size_t i = 0; i < count; ++i) {
    const double miss = loss(price, palette[i].lab, palette[i].contrast);
    if (miss < least) least = miss, best = &palette[i];
  }
  const Constants k;
  c.nearest = best->lab;
  c.level_error = level_of_lightness(best->lab.l) - level;
  c.tone_error = std::hypot(best->lab.a - c.wished.a, best->lab.b - c.wished.b);
  c.contrast_levels = best->contrast * levels_per_lightness(std::clamp(level, level_lowest, level_highest));
  c.reachable = std::abs(c.level_error) <= k.level_tolerance && c.tone_error <= k.tone_tolerance &&
                best->contrast <= price.contrast_free;
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
      const std::vector<ScenarioColour> colours = palette(ref, draws.zones[static_cast<size_t>(z)], draws, all, policy);
      r.recipes = static_cast<long long>(colours.size());
      for (double level = level_lowest; level <= level_highest; level += 1)
        for (int tone = 0; tone < kTones; ++tone)
          r.cells.push_back(cell(level, static_cast<Tone>(tone), colours, ref, policy));
    }
  });
  return out;
}

}  // namespace strandline
