#include "learned/response.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/existing.h"
#include "strandline/levels.h"
#include "strandline/treatment.h"

namespace strandline::learned {

std::string range_key(const Shelf& shelf, const std::string& range) {
  const std::string id = shelf.id.substr(0, shelf.id.find('@'));
  return id.empty() ? range : id + "/" + range;
}

void apply_to(Range& range, const Effect& effect) {
  constexpr double kMost = 5;  // what check(Shelf) allows
  // Rules ask whether a demi is acid, by its number where it has one.
  if (range.cls == ProductClass::demi && !range.alkaline_lift) return;
  const double own = alkaline_lift(range), line = Constants{}.acid_demi_lift_below;
  double now = std::clamp(own * std::exp(effect.lift), 0.0, kMost);
  if (range.cls == ProductClass::demi) now = own < line ? std::min(now, std::nexttoward(line, 0)) : std::max(now, line);
  range.alkaline_lift = now;
}

void apply_to(Product& product, const Range& range, const Effect& effect) {
  constexpr double kLeast = 0.1;
  if (!has_colour(product)) return;
  Spectrum offer = offered(product, range);
  for (int b = 0; b < kBands; ++b)
    offer[b] *= std::exp(effect.depth) * std::max(kLeast, 1 + effect.warmth * (550 - band_nm(b)) / 150);
  product.offer = offer;
}

namespace {

// White beside hair that was never coloured.
bool as_grown(const Span& span) {
  const double white = share_of(span, FibreKind::white);
  return white > 0 && white < 1 && share_of(span, ColourOrigin::natural) > 0.999;
}

}  // namespace

Result<Response> Response::of(const Outcome& outcome) {
  Response r;
  r.shelf_.id = outcome.shelf.id;
  r.head_ = outcome.head, r.steps_ = outcome.steps;
  std::set<std::string> ranges, products;
  for (const Step& step : outcome.steps) {
    ranges.insert(step.formula.range);
    for (const Part& part : step.formula.parts) products.insert(part.product);
  }
  for (const Product& p : outcome.shelf.products) {
    if (!products.contains(p.id)) continue;
    r.shelf_.products.push_back(p);
    if (find_range(outcome.shelf, p.range)) ranges.insert(p.range);
  }
  for (const Range& range : outcome.shelf.ranges)
    if (ranges.contains(range.id)) r.shelf_.ranges.push_back(range), r.ranges_.push_back(range_key(r.shelf_, range.id));
  for (Product& p : r.shelf_.products)
    if (const Range* range = find_range(r.shelf_, p.range)) p.offer = offered(p, *range);
  Draws names;
  for (const ZoneRef& z : strandline::zones(r.head_)) names.zones.emplace_back().id = z.id;
  if (const auto ready = prepared(r.steps_, r.shelf_, names); !ready) return tl::unexpected(ready.error());
  for (const ZoneRef& z : strandline::zones(r.head_))
    for (const Population& p : z.span->populations)
      if (!r.natural_ && p.kind == FibreKind::pigmented && p.origin == ColourOrigin::natural)
        r.natural_ = Natural{p.measured ? level_of_lightness(p.measured->l) : p.level.value, p.measured.has_value()};
  for (const ZoneRef& z : strandline::zones(r.head_))
    if (as_grown(*z.span) && !r.white_) r.white_ = share_of(*z.span, FibreKind::white);
  for (const Seen& seen : outcome.zones)
    if (!r.ranges_on(seen.zone).empty()) r.zones_.push_back(seen);
  return r;
}

std::vector<std::string> Response::ranges_on(const std::string& zone) const {
  std::vector<std::string> out;
  for (const Step& step : steps_)
    if (std::find(step.zones.begin(), step.zones.end(), zone) != step.zones.end() &&
        std::find(out.begin(), out.end(), range_key(shelf_, step.formula.range)) == out.end())
      out.push_back(range_key(shelf_, step.formula.range));
  return out;
}

// As draw() makes the nominal state of a zone, for one reading.
ZoneDraws Response::zone_as_read(const Span& span, const Readings& readings) const {
  constexpr double kDarkest = 1, kLightest = 10, kUsual = 5;
  const auto grown = [&](double level) {
    return std::clamp(readings.natural && natural_ ? level + *readings.natural - natural_->level : level - readings.eye,
                      kDarkest, kLightest);
  };
  ZoneDraws zone;
  zone.from_cm = span.from_cm, zone.to_cm = span.to_cm;
  zone.speed = span.strand_speed;
  if (span.strand_known) zone.speed_doubt = Constants{}.strand_leaves_doubt;
  double total = 0;
  for (const Population& p : span.populations) total += p.share.value;
  // Every zone as much whiter or less white as the first one is.
  const double read_white = share_of(span, FibreKind::white) / total;
  const bool known_white = readings.white && white_ && as_grown(span);
  const double white = known_white ? std::clamp(read_white + *readings.white - *white_, 0.01, 0.99) : read_white;
  for (const Population& p : span.populations) {
    const double own = grown(p.natural_level ? p.natural_level->value : natural_ ? natural_->level : kUsual);
    const double level = p.measured ? p.level.value
                         : p.origin == ColourOrigin::natural
                             ? grown(p.level.value)
                             : std::clamp(p.level.value - readings.eye, kDarkest, kLightest);
    Fibre f = fibre_as_read(p, level, own);
    f.porosity = std::clamp(span.porosity.value, 0.0, 3.0);
    f.resistance = p.kind == FibreKind::white ? span.resistance : 0;
    zone.kinds.push_back(p.kind);
    const double kind_share = p.kind == FibreKind::white ? read_white : 1 - read_white;
    const double kind_now = p.kind == FibreKind::white ? white : 1 - white;
    zone.nominal.shares.push_back(p.share.value / total * (known_white ? kind_now / kind_share : 1));
    zone.nominal.fibres.push_back(f);
  }
  return zone;
}

std::vector<ZoneDraws> Response::read(const Readings& readings) const {
  std::vector<ZoneDraws> out;
  const std::vector<ZoneRef> all = strandline::zones(head_);
  for (const Seen& seen : zones_)
    for (const ZoneRef& at : all)
      if (at.id == seen.zone) out.push_back(zone_as_read(*at.span, readings)), out.back().id = at.id;
  return out;
}

std::vector<Lab> Response::after(std::vector<ZoneDraws> zones, const Effects& effects) const {
  Shelf shelf = shelf_;
  for (Range& range : shelf.ranges)
    if (const auto found = effects.find(range_key(shelf, range.id)); found != effects.end()) {
      for (Product& p : shelf.products)
        if (p.range == range.id) apply_to(p, range, found->second);
      apply_to(range, found->second);
    }
  Draws nominal;  // no scenario
  std::vector<ReadyStep> steps;
  for (const Step& step : steps_)
    if (auto bowl = chemistry(step.formula, shelf)) steps.push_back({std::move(*bowl), step.zones, step.minutes});
  std::vector<Lab> out;
  for (ZoneDraws& zone : zones) {
    apply(steps, zone, nominal);
    out.push_back(view(zone.nominal, zone.kinds, nominal.nominal).lab);
  }
  return out;
}

}  // namespace strandline::learned
