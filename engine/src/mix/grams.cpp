#include "strandline/grams.h"

#include <algorithm>
#include <cmath>

#include "generated/constants.h"
#include "strandline/formulate.h"

namespace strandline {
namespace {

constexpr double kUsualHairs = 200, kUsualDiameterUm = 70;  // the head that mix_g_per_scalp_cm2 speaks of

double texture_factor(Texture t, const Constants& c) {
  switch (t) {
    case Texture::wavy:
      return c.mix_wavy;
    case Texture::curly:
      return c.mix_curly;
    case Texture::coily:
      return c.mix_coily;
    case Texture::straight:
      break;
  }
  return 1;
}

double cut_above_the_tips(Layers layers, const Constants& c) {
  if (layers == Layers::none) return 0;
  return layers == Layers::many ? c.layers_many : c.layers_some;
}

double length_of(const Area& area) {
  double to = 0;
  for (const Span& s : area.spans) to = std::max(to, s.to_cm);
  return to;
}

struct Wanted {
  const Head& head;
  std::vector<ZoneRef> zones;
  Constants c;

  // Grams of hair of the zone on one cm² of its scalp, from `from_cm` on.
  double hair_per_cm2(const ZoneRef& z, double from_cm) const {
    return hair_factor(head, *z.area) *
           hair_g_per_scalp_cm2(head.hair, std::max(z.span->from_cm, from_cm), z.span->to_cm, length_of(*z.area));
  }

  // A film lies on the surface: per gram, thin fibres carry more of it.
  double film() const { return kUsualDiameterUm / head.hair.diameter_um; }

  // On the scalp and the first of the hair, by partings; more hair, more partings.
  double scalp_coat(const ZoneRef& z) const {
    if (!touches_scalp(*z.span)) return 0;
    const double hairs = head.hair.hairs_per_cm2 * hair_factor(head, *z.area) / kUsualHairs;
    const double crowded = std::pow(hairs * head.hair.diameter_um / kUsualDiameterUm, c.mix_crowding);
    return c.mix_g_per_scalp_cm2 * crowded * scalp_cm2(head, *z.area);
  }

  // Hair beyond what the coat of the scalp covers.
  double beyond(const ZoneRef& z, double scalp) const {
    return scalp * hair_per_cm2(z, touches_scalp(*z.span) ? c.mix_scalp_reach_cm : 0) * film();
  }

  // In packets by themselves: each has its least.
  double in_packets(const ZoneRef& z) const {
    const double hair = scalp_cm2(head, *z.area) * hair_per_cm2(z, 0) * film(), n = packets(head, *z.area);
    return std::max(n * c.packet_least_g, n * c.mix_g_per_packet + c.mix_g_per_hair_g_packet * hair);
  }

  // At the basin a liquid runs over packets and the hair between them: this zone's part of that hair, cm² of scalp.
  double between(const ZoneRef& z) const {
    if (!z.area->woven) return 0;
    const auto of_same = [&](const ZoneRef& o) {
      return o.area->woven && o.area->woven->from == z.area->woven->from && o.span->from_cm < z.span->to_cm &&
             z.span->from_cm < o.span->to_cm;
    };
    for (const ZoneRef& o : zones)
      if (o.area->id == z.area->woven->from) return 0;  // counted by itself
    const auto ground =
        std::find_if(head.areas.begin(), head.areas.end(), [&](const Area& a) { return a.id == z.area->woven->from; });
    if (ground == head.areas.end()) return 0;
    return scalp_cm2(head, *ground) / static_cast<double>(std::count_if(zones.begin(), zones.end(), of_same));
  }
};

}  // namespace

double hair_g_per_scalp_cm2(const Hair& hair, double from_cm, double to_cm, double length_cm) {
  if (to_cm <= from_cm || length_cm <= 0) return 0;
  const Constants c;
  const double radius_cm = hair.diameter_um / 2 * 1e-4, reach = c.fibre_reach_efold_cm;
  const double g_per_cm = c.hair_density_g_per_cm3 * M_PI * radius_cm * radius_cm * hair.hairs_per_cm2;
  // ∫ e^(−x/reach)·(1 − cut·x/length) dx
  const double per_cm = cut_above_the_tips(hair.layers, c) / length_cm;
  const auto up_to = [&](double x) { return -reach * std::exp(-x / reach) * (1 - per_cm * (x + reach)); };
  return g_per_cm * (up_to(to_cm) - up_to(from_cm));
}

double packets(const Head& head, const Area& area) {
  return std::max(1.0, std::round(scalp_cm2(head, area) / Constants{}.packet_cm2));
}

MixGrams mix_grams(const Head& head, const std::vector<std::string>& wanted, const FormulaPolicy& policy) {
  Wanted all{head, zones(head), {}};
  std::erase_if(all.zones,
                [&](const ZoneRef& z) { return std::find(wanted.begin(), wanted.end(), z.id) == wanted.end(); });
  if (all.zones.empty()) return {};
  MixGrams g;
  for (const ZoneRef& z : all.zones) {
    const double coat = all.scalp_coat(z), own = scalp_cm2(head, *z.area);
    g.cream += z.area->woven ? all.in_packets(z) : coat + all.c.mix_g_per_hair_g_cream * all.beyond(z, own);
    g.liquid += coat + all.c.mix_g_per_hair_g_liquid * all.beyond(z, own + all.between(z));
  }
  const double factor = texture_factor(head.hair.texture, all.c) * policy.head_factor * (1 + policy.waste_share);
  for (double* grams : {&g.cream, &g.liquid}) *grams = std::max(all.c.mix_g_smallest, *grams * factor);
  return g;
}

}  // namespace strandline
