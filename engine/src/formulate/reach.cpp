#include "strandline/reach.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "formulate/reasons.h"
#include "mix/domain.h"
#include "mix/habits.h"
#include "mix/on_hair.h"
#include "mix/pour.h"
#include "mix/within.h"
#include "search/best_few.h"

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

// Recipes that this much mix may be poured of: law, and what is there.
std::vector<Shares> pourable(const RecipeSet& set, const Setting& setting, double grams, const Domain& all,
                             const FormulaPolicy& policy) {
  auto may = [&](const Shares& s, double total) {
    return std::isfinite(poured_price(set, s, setting, total, *all.shelf, policy));
  };
  // Percentages of a mix lie between those of its parts: where every shade by itself is lawful, so is every mix. What a
  // part needs of its tube is less than what it needs by itself in the largest mix that a smallest part may ask for.
  const double largest = std::max(grams, policy.part_min_g * kEighths * (1 + setting.ratio));
  std::vector<bool> alone;
  for (short i = 0; i < static_cast<short>(set.products().size()); ++i)
    alone.push_back(may({{i, 0, 0}, {kEighths, 0, 0}}, largest));
  std::vector<Shares> found;
  for (const Shares& s : set.few()) {
    bool sure = true;
    for (int i = 0; i < tubes(s); ++i) sure = sure && alone[static_cast<size_t>(s.product[i])];
    if (sure || may(s, grams)) found.push_back(s);
  }
  return found;
}

// What one bowl of up to two shades can give this zone, nominal, from dark to light; what is there already too.
struct Palette {
  ScenarioColour bare;
  std::vector<ScenarioColour> all;
  std::vector<ScenarioColour> no_tint;  // without permanent colour, where lightened hair may need that
  long long recipes = 0;
};

void from_dark_to_light(std::vector<ScenarioColour>& all) {
  std::stable_sort(all.begin(), all.end(),
                   [](const ScenarioColour& a, const ScenarioColour& b) { return a.lab.l < b.lab.l; });
}

// As long as is usual, or as near to it as the rules leave.
double usual_within(const Setting& s, const Span& span) {
  const RangeLimits* l = limits_on(span, *s.range);
  return l ? std::clamp(s.minutes, std::min(l->minutes_min, l->minutes_max), l->minutes_max) : s.minutes;
}

Palette palette(const Head& head, const ZoneRef& ref, const ZoneDraws& zone, const Draws& draws, const Domain& all,
                const FormulaPolicy& policy) {
  Palette out;
  out.all = out.no_tint = colours(zone_table(zone, draws), std::vector<float>(kBands, 0.0F).data());
  out.bare = out.all.front();
  const MixGrams grams = mix_grams(head, {ref.id}, policy);
  SearchZone place;
  place.span = ref.span;
  place.draws = &zone;
  place.half_touch = half_touch(head, *ref.area, *ref.span);
  for (const Domain::OneSetting& one : all.settings) {
    const double minutes = usual_within(one.setting, *ref.span);
    if (!forbidden(one.setting, *ref.span, policy).empty() || !within_rules(one.setting, minutes, place)) continue;
    ManyLoads loads(zone_table(zone, bare_chemistry(one.setting, minutes + place.half_touch), draws));
    const RecipeSet& set = all.sets[static_cast<size_t>(one.set)];
    std::vector<ScenarioColour> own;
    for (const Shares& s : pourable(set, one.setting, grams.of(*one.setting.range), all, policy))
      loads.add(set.load(s, one.setting.ratio), own);
    loads.flush(own);
    out.all.insert(out.all.end(), own.begin(), own.end());
    if (one.setting.range->cls != ProductClass::permanent)
      out.no_tint.insert(out.no_tint.end(), own.begin(), own.end());
  }
  from_dark_to_light(out.all);
  from_dark_to_light(out.no_tint);
  return out;
}

// What stays, in the words of a plan; none where it is reached.
Reasons why_not(const ReachCell& c, const SearchZone& zone, double free_contrast) {
  if (c.reachable) return {};
  const Constants k;
  const Named named = name_colour(c.nearest);
  const std::map<std::string, std::string> here = {{"asked", figure(c.level)},
                                                   {"reached", figure(named.level)},
                                                   {"asked_tone", std::string(word(c.tone))},
                                                   {"reached_tone", std::string(word(named.tone))},
                                                   {"levels", figure(c.contrast_levels)}};
  if (c.level_error < -k.level_tolerance)
    return {{asks_colour_to_lift_colour(zone) ? "colour_does_not_lift_colour" : "lift_limit", "", here}};
  if (c.level_error > k.level_tolerance) return {{"depth_out_of_reach", "", here}};
  if (c.contrast_levels > free_contrast) return {{"white_cover", "", here}};
  return {{named.tone == c.tone ? "tone_between_words" : "tone_out_of_reach", "", here}};
}

std::vector<Lab> corners(const std::vector<ScenarioColour>& all) {
  std::vector<Lab> found;
  for (int l = -1; l <= 1; ++l)
    for (int a = -1; a <= 1; ++a)
      for (int b = -1; b <= 1; ++b) {
        if (l == 0 && a == 0 && b == 0) continue;
        const auto out = [&](const ScenarioColour& c) { return l * c.lab.l + a * c.lab.a + b * c.lab.b; };
        const Lab far = std::max_element(all.begin(), all.end(), [&](const ScenarioColour& x, const ScenarioColour& y) {
                          return out(x) < out(y);
                        })->lab;
        if (std::none_of(found.begin(), found.end(), [&](const Lab& c) { return delta_e_ab(c, far) == 0; }))
          found.push_back(far);
      }
  return found;
}

// The colour that misses least of at least one. From the wished lightness outwards, as far as lightness alone does not
// miss by more.
const ScenarioColour& nearest(const std::vector<ScenarioColour>& all, const ZoneLoss& price) {
  const ScenarioColour* best = &all.front();
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
  zone.asked = asked_lift(*ref.span, target);
  const ScenarioColour& best = asks_colour_to_lift_colour(zone) ? palette.bare
                               : out_of_place_for_tint(zone)    ? nearest(palette.no_tint, price)
                                                                : nearest(palette.all, price);
  const Constants k;
  c.nearest = best.lab;
  c.level_error = level_of_lightness(best.lab.l) - level;
  c.tone_error = std::hypot(best.lab.a - c.wished.a, best.lab.b - c.wished.b);
  c.contrast_levels = best.contrast * levels_per_lightness(std::clamp(level, level_lowest, level_highest));
  c.reachable = std::abs(c.level_error) <= k.level_tolerance && c.tone_error <= k.tone_tolerance &&
                best.contrast <= price.contrast_free;
  c.why = why_not(c, zone, policy.covered_contrast_levels);
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
      const Palette colours = palette(head, ref, draws.zones[static_cast<size_t>(z)], draws, all, policy);
      r.recipes = static_cast<long long>(colours.all.size());
      r.corners = corners(colours.all);
      for (double level = level_lowest; level <= level_highest; level += 1)
        for (int tone = 0; tone < kTones; ++tone)
          r.cells.push_back(cell(level, static_cast<Tone>(tone), colours, ref, policy));
    }
  });
  return out;
}

}  // namespace strandline
