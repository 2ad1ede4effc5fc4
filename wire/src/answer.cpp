#include "strandline/wire/answer.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>

#include "strandline/fibre.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline::wire {

namespace {

Rgb as_rgb(const Srgb& c) {
  const auto byte = [](double v) { return static_cast<int>(std::lround(std::clamp(v, 0.0, 1.0) * 255)); };
  char buffer[8];
  std::snprintf(buffer, sizeof buffer, "#%02x%02x%02x", byte(c.r), byte(c.g), byte(c.b));
  return {buffer, !c.in_gamut};
}

Rgb seen(const Spectrum& reflectance, Light light) {
  const Weights& w = weights(light, Observer::cie_1964_10deg);
  return as_rgb(srgb(xyz(reflectance, w), w.white));
}

// Four decimals of reflectance are more than any screen or eye tells apart.
std::vector<double> rounded(const Spectrum& reflectance) {
  constexpr double steps = 1e4;
  std::vector<double> out(reflectance.begin(), reflectance.end());
  for (double& r : out) r = std::round(r * steps) / steps;
  return out;
}

PopulationView view(const PopulationColour& p) {
  return {p.name,        p.kind,       p.share,        p.lab,   under_lights(p.reflectance),
          p.named.level, p.named.tone, p.named.warmth, p.level, rounded(p.reflectance)};
}

ColourView view(const ZoneColour& z) {
  ColourView out;
  out.lab = z.lab;
  out.srgb = under_lights(z.reflectance);
  out.level = z.named.level;
  out.tone = z.named.tone;
  out.warmth = z.named.warmth;
  out.level_spread = z.level;
  out.contrast_levels = z.contrast_levels;
  out.porosity = z.porosity;
  out.condition_left = z.condition_left;
  for (const Lab& c : z.fan) out.fan.push_back({c, under_lights(c, z.reflectance)});
  for (const PopulationColour& p : z.populations) out.populations.push_back(view(p));
  out.reflectance = rounded(z.reflectance);
  return out;
}

TargetView view(const Target& t) {
  return {t.lab, under_lights(t.lab, t.level, t.tone), t.level, t.tone, t.leave, t.weight, t.second_tone};
}

using TargetOf = std::map<std::string, const Target*>;

TargetOf by_zone(const std::vector<Target>& targets) {
  TargetOf out;
  for (const Target& t : targets) out[t.zone] = &t;
  return out;
}

ZoneView view(const ZoneResult& r, const TargetOf& targets) {
  ZoneView out;
  out.zone = r.zone;
  if (r.landing) {
    out.likelihood = r.landing->likelihood;
    out.show_likelihood = r.landing->show_number;
    out.simulated = r.landing->simulated;
  }
  if (const auto t = targets.find(r.zone); t != targets.end()) out.target = view(*t->second);
  out.today = view(r.today);
  out.planned = view(r.planned);
  out.lift_levels = r.lift_levels;
  out.deposit = r.deposit;
  out.exposure = r.exposure;
  out.landing = r.landing;
  out.doubt = doubt_reasons(r.doubt);
  return out;
}

ZoneView view(const ZonePlan& z, const TargetOf& targets) {
  ZoneView out = view(z.result, targets);
  out.bowl = z.bowl;
  out.minutes = z.minutes;
  out.reachable = z.reachable;
  out.why_not = z.why_not;
  if (z.bowl.empty()) out.doubt.clear();
  return out;
}

}  // namespace

namespace {

std::optional<KnownBy> told(const Product* product) {
  return product && has_colour(*product) ? std::optional(known_by(*product)) : std::nullopt;
}

}  // namespace

BowlView view(const PlannedBowl& b, const Shelf& shelf) {
  BowlView out;
  const Formula& f = b.bowl.formula;
  out.label = b.bowl.label;
  out.range = f.range;
  if (const Range* range = find_range(shelf, f.range)) out.range_name = range->name;
  for (const Part& part : f.parts) {
    const Product* product = find_product(shelf, part.product);
    out.parts.push_back({part.product, product ? product->name : "", part.grams, told(product)});
  }
  out.minutes = f.minutes;
  out.damp_hair = f.damp_hair;
  out.zones = b.bowl.zones;
  out.step = b.bowl.step;
  out.grams = b.grams;
  out.cost = b.cost;
  out.on_head_peroxide_percent = b.on_head_peroxide_percent;
  out.recipe = b.recipe;
  out.runner_up = b.runner_up;
  out.objective = b.objective;
  out.rounded_objective = b.rounded_objective;
  out.runner_up_objective = b.runner_up_objective;
  out.certified = b.certified;
  out.certified_objective = b.certified_objective;
  out.refined_objective = b.refined_objective;
  out.others = b.others;
  out.turns = b.turns;
  out.limits = b.limits;
  out.why = b.why;
  out.effects = b.effects;
  return out;
}

namespace {

RouteView view(const Route& r, const TargetOf& targets, const Shelf& shelf) {
  RouteView out{r.kind,        {},    r.objective, r.after_first_visit, r.grams, r.cost, r.reachable, r.standard,
                r.recommended, r.why, r.notes};
  for (const RouteVisit& visit : r.visits) {
    RouteVisitView v{visit.weeks_after_last, visit.regrowth_cm, {}, visit.timeline, {}};
    for (const RouteStep& step : visit.steps) {
      RouteStepView s{step.kind, {}, step.check_after, step.if_check_shows};
      for (const PlannedBowl& b : step.bowls) s.bowls.push_back(wire::view(b, shelf));
      v.steps.push_back(std::move(s));
    }
    for (const ZonePlan& z : visit.zones) v.zones.push_back(view(z, targets));
    out.visits.push_back(std::move(v));
  }
  return out;
}

}  // namespace

Rgb rgb(const Lab& daylight) {
  const Xyz& white = weights(Light::daylight, Observer::cie_1964_10deg).white;
  return as_rgb(srgb(xyz(daylight, white), white));
}

UnderLights under_lights(const Spectrum& r) {
  return {seen(r, Light::daylight), seen(r, Light::lamp), seen(r, Light::led), seen(r, Light::fluorescent)};
}

UnderLights under_lights(const Lab& daylight, const Spectrum& like) {
  const Lab by_day = lab(like, weights(Light::daylight, Observer::cie_1964_10deg));
  const auto turned = [&](Light light) {
    const Weights& w = weights(light, Observer::cie_1964_10deg);
    const Lab c = lab(like, w);
    const Lab wanted{daylight.l + c.l - by_day.l, daylight.a + c.a - by_day.a, daylight.b + c.b - by_day.b};
    return as_rgb(srgb(xyz(wanted, w.white), w.white));
  };
  return {turned(Light::daylight), turned(Light::lamp), turned(Light::led), turned(Light::fluorescent)};
}

UnderLights under_lights(const Lab& daylight, double level, Tone tone) {
  return under_lights(daylight, reflectance(optical_depth(natural_fibre(level, tone), pigments(Constants{}))));
}

AssessAnswer view(const Assessment& assessment) {
  AssessAnswer out;
  for (const ZoneColour& z : assessment.zones) out.zones.push_back({z.zone, view(z)});
  out.notes = assessment.notes;
  return out;
}

AimAnswer view(const std::vector<Target>& targets) {
  AimAnswer out;
  for (const Target& t : targets) out.targets.push_back({t.zone, view(t)});
  return out;
}

PredictAnswer view(const Prediction& prediction, const std::vector<Target>& targets) {
  PredictAnswer out;
  const TargetOf wanted = by_zone(targets);
  for (const ZoneResult& r : prediction.zones) out.zones.push_back(view(r, wanted));
  out.notes = prediction.notes;
  return out;
}

VerdictsView view(const Verdicts& verdicts) {
  VerdictsView out{verdicts.go, {}};
  for (const Verdict& v : verdicts.list) {
    VerdictView own{v.rule,  v.topic, v.standing, v.says, v.source, v.classes,
                    v.zones, v.bowl,  v.fact,     {},     v.change, v.today};
    for (const auto& [name, value] : v.figures) own.figures[name] = number_text(value);
    out.verdicts.push_back(std::move(own));
  }
  return out;
}

FormulateAnswer view(const Plan& plan, const std::vector<Target>& targets, const Shelf& shelf) {
  FormulateAnswer out;
  const TargetOf wanted = by_zone(targets);
  for (const PlannedBowl& b : plan.bowls) out.bowls.push_back(view(b, shelf));
  for (const ZonePlan& z : plan.zones) out.zones.push_back(view(z, wanted));
  out.grams = plan.grams;
  out.cost = plan.cost;
  out.currency = plan.currency;
  out.why = plan.why;
  out.notes = plan.notes;
  out.bands = plan.bands;
  out.report = plan.report;
  for (const Alternative& a : plan.alternatives) {
    AlternativeView other{a.axis, {}, {}, {}, a.objective, a.grams, a.cost};
    for (const PlannedBowl& b : a.bowls) other.bowls.push_back(view(b, shelf));
    for (const ZonePlan& z : a.zones) other.zones.push_back(view(z, wanted));
    other.bands = a.bands;
    out.alternatives.push_back(std::move(other));
  }
  return out;
}

PlanAnswer view(const VisitPlan& plan, const Shelf& shelf) {
  PlanAnswer out{view(plan.plan, plan.targets, shelf), plan.timeline, {}, plan.after};
  out.plan.rules = view(plan.verdicts);
  const TargetOf wanted = by_zone(plan.targets);
  for (const Route& r : plan.routes) out.routes.push_back(view(r, wanted, shelf));
  const Problems& read = plan.assessment.notes;
  out.plan.notes.insert(out.plan.notes.begin(), read.begin(), read.end());
  return out;
}

ReachAnswer view(const std::vector<ZoneReach>& zones) {
  ReachAnswer out;
  for (const ZoneReach& z : zones) {
    ZoneReachView v{z.zone, {}, z.corners, static_cast<double>(z.recipes)};
    for (const ReachCell& c : z.cells)
      v.cells.push_back({c.level, c.tone, c.reachable, c.nearest, rgb(c.nearest), rgb(c.wished), c.level_error,
                         c.tone_error, c.contrast_levels, c.why});
    out.zones.push_back(std::move(v));
  }
  return out;
}

LevelsAnswer levels_answer() {
  LevelsAnswer out;
  for (double level = level_lowest; level <= level_highest; level += 1) {
    for (int tone = 0; tone < kTones; ++tone) {
      const Lab lab = colour_of(level, static_cast<Tone>(tone));
      out.swatches.push_back({level, static_cast<Tone>(tone), lab, under_lights(lab, level, static_cast<Tone>(tone))});
    }
  }
  return out;
}

ShelfAnswer view(const Shelf& shelf) {
  ShelfAnswer out{shelf.id, shelf.title, shelf.currency, shelf.invented, shelf.ranges, {}};
  const Weights& w = weights(Light::daylight, Observer::cie_1964_10deg);
  for (const Product& p : shelf.products) {
    ProductView v{p.id,         p.range,      p.name,      "", p.cls, p.level,
                  p.tone,       told(&p),     p.swatch_on, {}, {},    p.peroxide_percent,
                  std::nullopt, p.price_per_g};
    if (p.stock_g < kNotCounted) v.stock_g = p.stock_g;
    if (p.cls == ProductClass::clear) {
      // Clear has no colour of its own: what its swatch shows is the hair under it.
    } else if (p.swatch) {
      v.lab = lab(*p.swatch, w);
      v.srgb = under_lights(*p.swatch);
    } else if (has_colour(p) && p.level > 0) {
      v.lab = colour_of(p.level, p.tone);
      v.srgb = under_lights(*v.lab, p.level, p.tone);
    }
    out.products.push_back(std::move(v));
  }
  return out;
}

ShelfAnswer view(const ShelfDocument& document) {
  ShelfAnswer out = view(shelf_of(document));
  for (std::size_t i = 0; i < out.products.size(); ++i) {
    out.products[i].name = document.products[i].product.name;
    out.products[i].code = document.products[i].code;
  }
  return out;
}

}  // namespace strandline::wire
