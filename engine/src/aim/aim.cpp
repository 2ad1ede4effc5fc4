#include "strandline/aim.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "generated/tables.h"
#include "predict/view.h"
#include "strandline/existing.h"
#include "strandline/optics.h"
#include "strandline/predict.h"
#include "strandline/scenario.h"

namespace strandline {
namespace {

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

// What "7 copper" means, wished or promised.
Target in_words(double level, Tone tone, std::optional<Tone> second = {}) {
  Target t;
  t.lab = second ? colour_of(level, tone, *second) : colour_of(level, tone);
  t.level = level;
  t.tone = tone;
  t.second_tone = second;
  return t;
}

// What zones look like today, nominally: named by wishes that speak of it.
struct Today {
  explicit Today(const Head& head) : draws(draw(head, 1, 0)) {}
  std::optional<ZoneView> of(const std::string& zone) const {
    for (const ZoneDraws& z : draws.zones)
      if (z.id == zone) return view(z.nominal, z.kinds, draws.nominal);
    return std::nullopt;
  }
  // The mean of the fibres that are not white; of all where there are no others.
  Lab without_white(const std::string& zone) const {
    for (const ZoneDraws& z : draws.zones) {
      if (z.id != zone) continue;
      const ZoneView seen = view(z.nominal, z.kinds, draws.nominal);
      Lab sum{};
      double share = 0;
      for (size_t i = 0; i < z.kinds.size(); ++i) {
        if (z.kinds[i] == FibreKind::white) continue;
        const double own = z.nominal.shares[i];
        share += own;
        sum.l += own * seen.populations[i].l, sum.a += own * seen.populations[i].a;
        sum.b += own * seen.populations[i].b;
      }
      return share > 0 ? Lab{sum.l / share, sum.a / share, sum.b / share} : seen.lab;
    }
    return {};
  }
  Draws draws;
};

Target as_seen(const Lab& lab) {
  Target t;
  t.lab = lab;
  const Named named = name_colour(lab);
  t.level = named.level, t.tone = named.tone;
  return t;
}

// What a wish that speaks of today asks for on this zone.
Target from_today(const ZoneAim& wish, const std::string& zone, const Today& today) {
  if (!wish.match.empty()) return as_seen(today.of(wish.match)->lab);
  const Lab now = today.of(zone)->lab;
  if (wish.brighter_by) {
    const double level = level_of_lightness(now.l) + *wish.brighter_by;
    return in_words(std::clamp(level, level_lowest, level_highest), wish.tone);
  }
  const Lab own = today.without_white(zone);
  Target t = as_seen(own);
  const double share = *wish.blend;
  t.lab = {now.l + share * (own.l - now.l), now.a + share * (own.a - now.a), now.b + share * (own.b - now.b)};
  t.blend = true;
  return t;
}

// So many levels darker than the next span of the area is wished, or looks where it is to stay.
Target shadow(const ZoneAim& wish, const ZoneRef& next, const Target& below, std::optional<Today>& today,
              const Head& head) {
  if (below.leave && !today) today.emplace(head);
  const double level = below.leave ? level_of_lightness(today->of(next.id)->lab.l) : below.level;
  Target t = in_words(std::clamp(level - *wish.shadow, level_lowest, level_highest), wish.tone);
  t.shadow = *wish.shadow;
  return t;
}

// A clear fashion tone on hair that is pale enough for it: what its own direct colour makes of such hair at that depth.
bool is_vivid(const ZoneAim& wish, const ZoneRef& zone, const Shelf& shelf) {
  constexpr double kPastelFrom = 8.5;  // level; as the fact "vivid" of the rules
  const bool named = wish.level && *wish.level < kPastelFrom && (wish.tone == Tone::violet || wish.tone == Tone::green);
  const bool at_hand = std::any_of(shelf.products.begin(), shelf.products.end(),
                                   [](const Product& p) { return p.cls == ProductClass::direct && p.stock_g > 0; });
  return named && at_hand && share_of(*zone.span, [](const Population& p) {
                               return p.origin == ColourOrigin::lightened &&
                                      p.level.value >= Constants{}.yellow_below_level;
                             }) > 0.5;
}

Lab vivid(double level, Tone tone) {
  const Constants c;
  const Pigments pigment = pigments(c);
  Fibre pale = white_fibre();
  const auto seen = [&](double depth) {
    std::array<double, 3> hue = tables::hue_words[static_cast<size_t>(tone)];
    for (double& own : hue) own *= depth;
    pale.dye = plain_absorbers(hue);
    return lab(reflectance(optical_depth(pale, pigment)), daylight());
  };
  const double lightness = colour_of(level, Tone::natural).l;
  double weak = 0, strong = 4;
  constexpr int kHalvings = 40;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = (weak + strong) / 2;
    (seen(middle).l > lightness ? weak : strong) = middle;
  }
  return seen(weak);
}

bool speaks_of_today(const ZoneAim& w) { return !w.match.empty() || w.brighter_by || w.blend; }

// The target one wish asks for, or what is wrong with the wish; one that speaks of today differs from zone to zone.
Result<Target> target_of(const ZoneAim& wish, const std::string& path, const Shelf& shelf,
                         const std::vector<ZoneRef>& all) {
  Target t;
  t.leave = wish.leave;
  if (wish.leave) return t;
  const int given = !wish.shade.empty() + wish.level.has_value() + wish.lab.has_value() + !wish.match.empty() +
                    wish.brighter_by.has_value() + wish.blend.has_value() + wish.shadow.has_value();
  if (given != 1) return tl::unexpected(Problems{{"aim_needs_one", path, {{"given", std::to_string(given)}}}});
  if (wish.second_tone && !wish.level)
    return tl::unexpected(Problems{{"second_tone_needs_level", path + "/second_tone", {}}});
  if (speaks_of_today(wish)) {
    if (!wish.match.empty() &&
        std::none_of(all.begin(), all.end(), [&](const ZoneRef& z) { return z.id == wish.match; }))
      return tl::unexpected(Problems{{"unknown_zone", path + "/match", {{"zone", wish.match}}}});
    return t;
  }
  if (wish.shadow) return t;
  if (!wish.shade.empty()) {
    const Product* shade = find_product(shelf, wish.shade);
    // Clear, and what has a hue and no level, is no wish by its name; a swatch always is.
    if (!shade || !has_colour(*shade) || (!shade->swatch && shade->level <= 0))
      return tl::unexpected(Problems{{"unknown_shade", path + "/shade", {{"shade", wish.shade}}}});
    if (!shade->swatch) return in_words(std::min(shade->level, level_highest), shade->tone);
    t.lab = lab(*shade->swatch, daylight());
  } else if (wish.lab) {
    t.lab = *wish.lab;
    const bool fine = std::isfinite(t.lab.l) && std::isfinite(t.lab.a) && std::isfinite(t.lab.b) && t.lab.l > 0 &&
                      t.lab.l < 100 && std::abs(t.lab.a) <= 100 && std::abs(t.lab.b) <= 100;
    if (!fine) return tl::unexpected(Problems{{"lab_out_of_range", path + "/lab", {}}});
  } else {
    if (!(*wish.level >= level_lowest && *wish.level <= level_highest))
      return tl::unexpected(
          Problems{{"level_out_of_range", path + "/level", {{"level", std::to_string(*wish.level)}}}});
    return in_words(*wish.level, wish.tone, wish.second_tone);
  }
  const Named named = name_colour(t.lab);
  t.level = named.level;
  t.tone = named.tone;
  return t;
}

}  // namespace

Result<std::vector<Target>> aim(const Head& head, const std::vector<ZoneAim>& wishes, const Shelf& shelf) {
  Problems problems;
  const std::vector<ZoneRef> all = zones(head);
  std::vector<Target> targets;
  for (size_t i = 0; i < wishes.size(); ++i)
    if (wishes[i].zone != "*" &&
        std::none_of(all.begin(), all.end(), [&](const ZoneRef& z) { return z.id == wishes[i].zone; }))
      problems.push_back({"unknown_zone", "/aims/" + std::to_string(i) + "/zone", {{"zone", wishes[i].zone}}});
  for (size_t i = 0; i < wishes.size(); ++i)
    if (std::any_of(wishes.begin(), wishes.begin() + static_cast<long>(i),
                    [&](const ZoneAim& w) { return w.zone == wishes[i].zone; }))
      problems.push_back({"aim_twice", "/aims/" + std::to_string(i) + "/zone", {{"zone", wishes[i].zone}}});
  std::vector<Result<Target>> made;
  std::optional<Today> today;
  for (size_t i = 0; i < wishes.size(); ++i) {
    made.push_back(target_of(wishes[i], "/aims/" + std::to_string(i), shelf, all));
    if (!made.back()) problems.insert(problems.end(), made.back().error().begin(), made.back().error().end());
  }
  auto wish_for = [&](const std::string& zone) {
    auto named = [&](const std::string& name) {
      return std::find_if(wishes.begin(), wishes.end(), [&](const ZoneAim& w) { return w.zone == name; });
    };
    const auto wish = named(zone);
    return wish == wishes.end() ? named("*") : wish;
  };
  for (const ZoneRef& z : all) {
    if (wishes.empty()) {
      problems.push_back({"aim_missing", "/aims", {{"zone", z.id}}});
      continue;
    }
    const auto wish = wish_for(z.id);
    // A wish for one area leaves the rest as it is.
    Target unasked;
    unasked.leave = true;
    const Result<Target> t =
        wish == wishes.end() ? Result<Target>(unasked) : made[static_cast<size_t>(wish - wishes.begin())];
    if (!t) continue;
    const bool today_matters = wish != wishes.end() && !wish->leave && speaks_of_today(*wish);
    if (today_matters && !today) today.emplace(head);
    targets.push_back(today_matters ? from_today(*wish, z.id, *today) : *t);
    if (wish != wishes.end() && !wish->leave && is_vivid(*wish, z, shelf))
      targets.back().lab = vivid(*wish->level, wish->tone);
  }
  if (!problems.empty()) return tl::unexpected(problems);
  // From the tips in: a shadow may lie over another.
  for (size_t i = all.size(); i-- > 0;) {
    const auto wish = wish_for(all[i].id);
    if (wish != wishes.end() && !wish->leave && wish->shadow) {
      if (i + 1 == all.size() || all[i + 1].area != all[i].area)
        return tl::unexpected(Problems{{"shadow_needs_lengths",
                                        "/aims/" + std::to_string(wish - wishes.begin()) + "/shadow",
                                        {{"zone", all[i].id}}}});
      targets[i] = shadow(*wish, all[i + 1], targets[i + 1], today, head);
    }
    targets[i].zone = all[i].id;
    targets[i].weight =
        tables::area_visibility[static_cast<size_t>(all[i].area->kind)][0] * own_share(head, *all[i].area);
  }
  return targets;
}

}  // namespace strandline
