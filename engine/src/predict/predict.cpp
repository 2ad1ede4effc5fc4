#include "strandline/predict.h"

#include <algorithm>
#include <cmath>

#include "predict/attribute.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/loss.h"

namespace strandline {
namespace {

// How far the pigment itself was lifted, in levels, dye left out; 0 where nothing is pigmented.
double lift(const ZoneState& before, const ZoneState& after, const std::vector<FibreKind>& kinds, const Constants& c) {
  auto level = [&](Fibre f) {
    f.dye = Spectrum{};
    ZoneState alone{{1}, {f}};
    return level_of_lightness(view(alone, {FibreKind::pigmented}, c).lab.l);
  };
  double sum = 0, share = 0;
  for (size_t p = 0; p < kinds.size(); ++p) {
    if (kinds[p] == FibreKind::white) continue;
    sum += before.shares[p] * (level(after.fibres[p]) - level(before.fibres[p]));
    share += before.shares[p];
  }
  return share > 0 ? sum / share : 0;
}

Landing landing(const Target& target, const ZoneColour& planned, const std::vector<ZoneView>& views, double covered) {
  const Constants c;
  const ZoneLoss price = zone_loss(target, covered);
  auto level_off = [&](const Lab& l) { return level_of_lightness(l.l) - target.level; };
  auto tone_off = [&](const Lab& l) { return std::hypot(l.a - target.lab.a, l.b - target.lab.b); };
  Landing land;
  double level_hits = 0, tone_hits = 0, cover_hits = 0, hits = 0;
  for (const ZoneView& v : views) {
    const bool level = std::abs(level_off(v.lab)) <= c.level_tolerance;
    const bool tone = tone_off(v.lab) <= c.tone_tolerance;
    level_hits += level, tone_hits += tone, hits += level && tone;
    cover_hits += v.contrast <= price.contrast_free;
    land.expected_loss += loss(price, v.lab, v.contrast);
  }
  const double n = static_cast<double>(std::max<size_t>(views.size(), 1));
  land.likelihood = hits / n;
  land.level_likelihood = level_hits / n;
  land.tone_likelihood = tone_hits / n;
  land.cover_likelihood = cover_hits / n;
  land.expected_loss /= n;
  land.delta_e_2000 = delta_e_2000(planned.lab, target.lab);
  land.level_error = level_off(planned.lab);
  land.tone_error = tone_off(planned.lab);
  return land;
}

// Nothing records results yet: only an invented shelf, whose results are its own simulation, shows a number.
void earn(const std::vector<Step>& steps, const Shelf& shelf, const std::string& zone, Landing& land) {
  const bool used = std::any_of(steps.begin(), steps.end(), [&](const Step& step) {
    return std::find(step.zones.begin(), step.zones.end(), zone) != step.zones.end();
  });
  land.simulated = land.show_number = used && shelf.invented;
}

}  // namespace

Result<Prediction> predict(const Head& head, const std::vector<Step>& steps, const Shelf& shelf,
                           const std::vector<Target>& targets, const PredictOptions& options) {
  Draws draws = draw(head, options.scenarios);
  const auto ready = prepared(steps, shelf, draws);
  if (!ready) return tl::unexpected(ready.error());

  Prediction out;
  out.zones.resize(draws.zones.size());
  auto one_zone = [&](size_t index) {
    ZoneDraws& zone = draws.zones[index];
    ZoneResult& r = out.zones[index];
    r.zone = zone.id;
    r.today = zone_colour(zone, draws);
    const ZoneState before = zone.nominal;
    const StepTotals done = apply(*ready, zone, draws);
    r.exposure = done.exposure, r.deposit = done.deposit;
    std::vector<ZoneView> views;
    r.planned = zone_colour(zone, draws, &views);
    r.lift_levels = lift(before, zone.nominal, zone.kinds, draws.nominal);
    for (const Target& t : targets) {
      if (t.zone != zone.id || t.leave) continue;
      r.landing = landing(t, r.planned, views, options.covered_contrast_levels);
      earn(steps, shelf, zone.id, *r.landing);
    }
  };
  options.parallel(static_cast<int>(draws.zones.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) one_zone(static_cast<size_t>(i));
  });
  if (!options.attribute_doubt) return out;
  std::vector<ZoneDoubt> doubts = attribute(head, *ready, options.parallel);
  for (size_t z = 0; z < out.zones.size(); ++z) out.zones[z].doubt = std::move(doubts[z].shares);
  return out;
}

}  // namespace strandline
