#include "formulate/bands.h"

#include <algorithm>
#include <cmath>

#include "formulate/reasons.h"
#include "generated/tables.h"

namespace strandline {
namespace {

bool meet(const ZoneRef& a, const ZoneRef& b) {
  constexpr double kTouchingCm = 0.05;  // by choice: half of the 0.1 cm to which spans are told
  if (a.area->woven || b.area->woven || a.span->extension || b.span->extension) return false;
  if (a.area == b.area)
    return std::abs(a.span->to_cm - b.span->from_cm) <= kTouchingCm ||
           std::abs(b.span->to_cm - a.span->from_cm) <= kTouchingCm;
  const bool beside = tables::area_neighbours[static_cast<size_t>(a.area->kind)][static_cast<size_t>(b.area->kind)] > 0;
  // Side by side for most of the shorter one.
  const double common = std::min(a.span->to_cm, b.span->to_cm) - std::max(a.span->from_cm, b.span->from_cm);
  const double shorter = std::min(a.span->to_cm - a.span->from_cm, b.span->to_cm - b.span->from_cm);
  return beside && common > 0.5 * shorter;
}

const Target* wish_of(const std::vector<Target>& targets, const std::string& zone) {
  for (const Target& t : targets)
    if (t.zone == zone && !t.leave) return &t;
  return nullptr;
}

}  // namespace

std::vector<Band> bands(const Head& head, const std::vector<Target>& targets, const std::vector<ZonePlan>& plans) {
  const std::vector<ZoneRef> refs = zones(head);
  std::vector<Band> all;
  for (size_t i = 0; i < refs.size() && i < plans.size(); ++i)
    for (size_t j = i + 1; j < refs.size() && j < plans.size(); ++j) {
      if (!meet(refs[i], refs[j])) continue;
      const ZoneResult* light = &plans[i].result;
      const ZoneResult* dark = &plans[j].result;
      if (light->planned.named.level < dark->planned.named.level) std::swap(light, dark);
      Band b{light->zone, dark->zone, light->planned.named.level - dark->planned.named.level,
             light->today.named.level - dark->today.named.level, 0};
      if (b.levels < Constants{}.band_from_levels) continue;
      const Target *up = wish_of(targets, light->zone), *down = wish_of(targets, dark->zone);
      if (up && down)
        b.wished = up->level - down->level;
      else if (down && light->zone == refs[j].id)
        b.wished = down->shadow;  // beside what stays
      all.push_back(std::move(b));
    }
  std::stable_sort(all.begin(), all.end(), [](const Band& a, const Band& b) { return a.levels > b.levels; });
  return all;
}

Problems told_bands(const std::vector<Band>& all) {
  Problems notes;
  for (const Band& b : all) {
    const bool wished = b.wished >= b.levels - Constants{}.band_from_levels;
    notes.push_back({wished ? "band_wished" : "band",
                     "",
                     {{"lighter", b.lighter}, {"darker", b.darker}, {"levels", figure(b.levels)}}});
  }
  return notes;
}

}  // namespace strandline
