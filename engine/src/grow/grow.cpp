#include "strandline/grow.h"

#include <algorithm>
#include <cmath>

#include "hair/latin.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/growth.h"

namespace strandline {
namespace {

constexpr int kScenarios = 256;
constexpr double kDaysPerMonth = 30.4, kMmPerCm = 10, kDaysPerWeek = 7;

double percentile(std::vector<double> v, double q) {
  const auto i = static_cast<size_t>(q * static_cast<double>(v.size() - 1) + 0.5);
  std::nth_element(v.begin(), v.begin() + static_cast<long>(i), v.end());
  return v[i];
}

// The hair that grows under this span: its fibres without what was done to them.
Head as_it_grows(const Head& head, const Span& span, double natural_level) {
  Head bare;
  bare.hair = head.hair;
  bare.areas.resize(1);
  bare.areas[0].id = "grows";
  Span s = span;
  s.from_cm = 0, s.to_cm = 1;
  for (Population& p : s.populations) {
    if (p.origin == ColourOrigin::natural) continue;
    if (p.kind == FibreKind::pigmented) p.level = p.natural_level.value_or(Reading{natural_level, p.level.sd});
    p.origin = ColourOrigin::natural;
    p.tone = Tone::natural;
    p.measured.reset();
  }
  bare.areas[0].spans = {s};
  return bare;
}

// The level at which this area's own hair grows, regrowth before lengths, else the head's.
double natural_level_of(const Head& head) {
  for (const ZoneRef& z : zones(head))
    for (const Population& p : z.span->populations)
      if (p.kind == FibreKind::pigmented && p.origin == ColourOrigin::natural) return p.level.value;
  return 5;
}

struct Pair {
  ZoneDraws natural, coloured;
};

RegrowthLine line_of(const Area& area, const Pair& zone, const Draws& draws) {
  RegrowthLine line;
  line.area = area.id;
  line.zone = zone.coloured.id;
  const ZoneColour natural = zone_colour(zone.natural, draws), coloured = zone_colour(zone.coloured, draws);
  line.natural = natural.lab, line.coloured = coloured.lab;
  line.natural_reflectance = natural.reflectance, line.coloured_reflectance = coloured.reflectance;
  const Constants& c = draws.nominal;
  line.contrast_levels = line_contrast(line.natural, line.coloured, c);
  line.shows = line.contrast_levels >= c.line_least_levels;
  if (!line.shows) return line;

  const std::vector<double> pace = latin_column(kScenarios, 200000);
  const double week_cm = c.growth_mm_per_month / kMmPerCm * kDaysPerWeek / kDaysPerMonth;
  const Reading month = regrowth_cm(kDaysPerMonth / kDaysPerWeek);
  std::vector<double> weeks;
  for (int s = 0; s < kScenarios; ++s) {
    const auto i = static_cast<size_t>(s);
    const Lab below = view(zone.natural.scenarios[i], zone.natural.kinds, draws.constants[i]).lab;
    const Lab above = view(zone.coloured.scenarios[i], zone.coloured.kinds, draws.constants[i]).lab;
    const double contrast = std::max(line_contrast(below, above, c), c.line_least_levels);
    const double speed = std::max(0.3, 1 + month.sd / month.value * pace[i]);
    weeks.push_back(c.line_level_cm / contrast / (week_cm * speed));
  }
  line.weeks = {percentile(weeks, 0.1), percentile(weeks, 0.5), percentile(weeks, 0.9)};
  return line;
}

// The span nearest the scalp that is no other hair with a bond; null where there is none.
const Span* nearest(const Area& area) {
  const Span* best = nullptr;
  for (const Span& s : area.spans)
    if (!s.extension && (!best || s.from_cm < best->from_cm)) best = &s;
  return best;
}

}  // namespace

double line_contrast(const Lab& natural, const Lab& coloured, const Constants& c) {
  return std::abs(level_of_lightness(natural.l) - level_of_lightness(coloured.l)) +
         c.line_levels_per_tone_unit * std::hypot(natural.a - coloured.a, natural.b - coloured.b);
}

Result<Growth> grow(const Head& head, const std::vector<Step>& steps, const Shelf& shelf, const ParallelFor& parallel) {
  Draws draws = draw(head, kScenarios);
  const auto ready = prepared(steps, shelf, draws);
  if (!ready) return tl::unexpected(ready.error());
  Growth out;
  const double natural_level = natural_level_of(head);
  std::vector<const Area*> areas;
  for (const Area& area : head.areas)
    if (nearest(area)) areas.push_back(&area);
  out.lines.resize(areas.size());
  const auto grow_one = [&](size_t i) {
    const Area& area = *areas[i];
    const Span* span = nearest(area);
    const std::string id = area.id + "/" + span->id;
    Pair pair;
    pair.natural = draw(as_it_grows(head, *span, natural_level), kScenarios).zones[0];
    pair.coloured =
        *std::find_if(draws.zones.begin(), draws.zones.end(), [&](const ZoneDraws& z) { return z.id == id; });
    apply(*ready, pair.coloured, draws);
    out.lines[i] = line_of(area, pair, draws);
  };
  parallel(static_cast<int>(areas.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) grow_one(static_cast<size_t>(i));
  });
  for (double weeks : {2.0, 4.0, 6.0, 8.0, 12.0}) out.lengths.push_back({weeks, regrowth_cm(weeks)});
  return out;
}

}  // namespace strandline
