#include "pipeline/afterwards.h"

#include <algorithm>
#include <cmath>

#include "formulate/reasons.h"
#include "generated/tables.h"
#include "mix/habits.h"
#include "mix/on_hair.h"
#include "rules/evaluate.h"
#include "strandline/grow.h"

namespace strandline {
namespace {

using Params = std::map<std::string, std::string>;

Params in(Weeks w) { return {{"from", figure(w.from, 0)}, {"until", figure(w.until, 0)}}; }

// The sooner of two, where both are told.
void sooner(Weeks& all, Weeks one) {
  if (all.until <= 0 || one.until < all.until) all = one;
}

const Service* had(const Span& s, ServiceKind kind) {
  const auto own = std::find_if(s.services.begin(), s.services.end(), [&](const Service& v) { return v.kind == kind; });
  return own == s.services.end() ? nullptr : &*own;
}

// What is offered first, in the order it goes on.
struct Offered {
  std::vector<PlannedBowl> bowls;
  int visits = 0;
};

Offered offered_first(const VisitPlan& plan) {
  for (const Route& r : plan.routes) {
    if (!r.recommended) continue;
    Offered o;
    for (const RouteStep& s : r.visits.front().steps) o.bowls.insert(o.bowls.end(), s.bowls.begin(), s.bowls.end());
    o.visits = static_cast<int>(r.visits.size());
    return o;
  }
  return {plan.plan.bowls, plan.plan.bowls.empty() ? 0 : 1};
}

class Teller {
 public:
  Teller(const Visit& visit, const VisitPlan& plan) : visit_(visit), plan_(plan), offered_(offered_first(plan)) {}

  Afterwards told() {
    out_.visits_from = out_.visits_until = offered_.visits;
    line();
    for (const ZoneRef& z : zones(visit_.head)) of_zone(z);
    if (out_.lasts.until > 0) sooner(out_.rebook, {(out_.lasts.from + out_.lasts.until) / 2, out_.lasts.until});
    // What fades before the line is seen brings the client first.
    if (out_.line.until > 0 && (out_.lasts.until <= 0 || out_.lasts.until >= out_.line.until))
      out_.rebook = {out_.line.until, out_.line.until + c_.line_rebook_weeks};
    if (look_again_.until > 0) out_.rebook = look_again_;
    const auto& minerals = tables::after_minerals[0];
    if (minerals_ && out_.rebook.until <= 0) out_.rebook = {minerals[0], minerals[1]};
    next_test();
    if (dye_) say("after_signs_wash_off");
    return std::move(out_);
  }

 private:
  void say(std::string_view code, Params params = {}) {
    if (std::none_of(out_.told.begin(), out_.told.end(), [&](const Problem& p) { return p.code == code; }))
      out_.told.push_back({std::string(code), "", std::move(params)});
  }

  const PlannedBowl* last_on(const std::string& zone) const {
    const PlannedBowl* last = nullptr;
    for (const PlannedBowl& b : offered_.bowls)
      if (on(b, zone)) last = &b;
    return last;
  }

  ProductClass cls(const PlannedBowl& b) const { return find_range(visit_.shelf, b.bowl.formula.range)->cls; }

  // A demi near the hair's own level washes out before it draws a line.
  bool draws_a_line(const Span& span, const std::string& zone) const {
    const PlannedBowl* b = last_on(zone);
    if (!b) return false;
    const Target* t = wish(zone);
    const bool stays = cls(*b) == ProductClass::permanent || cls(*b) == ProductClass::high_lift;
    return stays || (t && std::abs(asked_lift(span, *t)) > c_.lighter_beyond_doubt);
  }

  void line() {
    if (offered_.bowls.empty()) return;
    const auto growth = grow(visit_.head, steps_of(offered_.bowls), visit_.shelf);
    if (!growth) return;  // what it names is a problem of the plan, told there
    for (const ZoneRef& z : zones(visit_.head)) {
      if (!draws_a_line(*z.span, z.id)) continue;
      for (const RegrowthLine& l : growth->lines)
        if (l.zone == z.id && l.shows)
          sooner(out_.line, {std::max(1.0, std::floor(l.weeks.p10)), std::max(1.0, std::ceil(l.weeks.p90))});
      if (z.area->spans.back().to_cm <= c_.short_hair_until_cm) {
        const Weeks weeks{c_.short_hair_grows_from, c_.short_hair_grows_until};
        sooner(out_.line, weeks);
        say("after_short_hair_grows_out", in(weeks));
      }
    }
    if (out_.line.until > 0) say("after_line_shows", in(out_.line));
  }

  const Target* wish(const std::string& zone) const {
    for (const Target& t : plan_.targets)
      if (t.zone == zone && !t.leave) return &t;
    return nullptr;
  }

  void lasts(std::string_view code, double from, double until) {
    sooner(out_.lasts, {from, until});
    say(code, in({from, until}));
  }

  void of_zone(const ZoneRef& z) {
    const Target* t = wish(z.id);
    const Span& s = *z.span;
    const PlannedBowl* b = last_on(z.id);
    dye_ = dye_ || t;
    if (had(s, ServiceKind::minerals)) say("after_metal_comes_back"), minerals_ = true;
    if (had(s, ServiceKind::home_colour)) say("after_no_more_home_colour");
    if (!t) return;
    const double lift = asked_lift(s, *t), lightened = share_of(s, ColourOrigin::lightened);
    fresh_colour(s, lift, b);
    if (t->tone == Tone::violet && lightened > kMost && level(s) < c_.yellow_below_level)
      say("after_violet_on_yellow_dulls");
    if (!b) return;
    if (had(s, ServiceKind::permed)) say("after_curl_may_loosen");
    fades(*b, *t, s, lift);
    if (lift < -kLevel) say("after_lighter_needs_more");
    if (lift < 0 && s.porosity.value >= c_.fill_from_porosity) say("after_ends_take_and_fade");
    if (lift > kLevel && cls(*b) != ProductClass::lightener) say("after_warmth_stays");
    if (touches_scalp(s) && (t->tone == Tone::red || t->tone == Tone::copper) && share_of(s, FibreKind::white) < kMost)
      say("after_growth_may_glow");
    taken_out(z, s);
  }

  double level(const Span& s) const {
    double sum = 0, all = 0;
    for (const Population& p : s.populations)
      if (p.kind == FibreKind::pigmented) sum += p.share.value * p.level.value, all += p.share.value;
    return all > 0 ? sum / all : level_highest;
  }

  void fades(const PlannedBowl& b, const Target& t, const Span& s, double lift) {
    const bool lightened = share_of(s, ColourOrigin::lightened) > kMost;
    if (cls(b) == ProductClass::direct) {
      lasts("after_direct_fades", c_.direct_lasts_from, c_.direct_lasts_until);
      say("after_direct_stains");
    } else if (t.tone == Tone::red) {
      lasts("after_red_fades_first", c_.red_lasts_from, c_.red_lasts_until);
    } else if (t.tone == Tone::copper) {
      lasts("after_copper_fades", c_.copper_lasts_from, c_.copper_lasts_until);
    } else if (cls(b) == ProductClass::demi && lightened && lift > -kLevel) {
      lasts("after_toner_lasts", c_.toner_lasts_from, c_.toner_lasts_until);
    } else if (cls(b) == ProductClass::demi && lightened) {
      lasts("after_shadow_fades", c_.blend_lasts_from, c_.blend_lasts_until);
    } else if (cls(b) == ProductClass::demi) {
      const bool blends = share_of(s, FibreKind::white) > kScattered;
      lasts(blends ? "after_blended_not_covered" : "after_fades_softly", c_.blend_lasts_from, c_.blend_lasts_until);
    }
  }

  // Too dark by little, some days ago: it still fades by itself.
  void fresh_colour(const Span& s, double lift, const PlannedBowl* b) {
    const Service* colour = had(s, ServiceKind::coloured);
    if (!colour || colour->weeks_ago.value_or(0) > c_.fresh_colour_weeks || lift <= 0) return;
    if (share_of(s, ColourOrigin::tinted) > kMost && lift < c_.lighter_beyond_doubt && !b) {
      say("after_wash_and_wait");
      look_again_ = {1, c_.fresh_colour_weeks};
    }
  }

  // Colour was taken out of this zone: it shows warm, and may come back.
  void taken_out(const ZoneRef& z, const Span& s) {
    if (share_of(s, ColourOrigin::tinted) <= kMost) return;
    for (const PlannedBowl& b : offered_.bowls) {
      if (!on(b, z.id) || (cls(b) != ProductClass::remover && cls(b) != ProductClass::lightener)) continue;
      const Service* colour = had(s, ServiceKind::coloured);
      const bool fresh = colour && colour->weeks_ago.value_or(0) <= c_.fresh_colour_weeks;
      say("after_warmth_shows");
      if (cls(b) == ProductClass::remover) say("after_darkens_back");
      say("after_half_way_is_good");
      look_again_ = fresh ? Weeks{1, c_.fresh_colour_weeks} : Weeks{c_.look_again_from, c_.look_again_until};
      out_.visits_until = std::max(out_.visits_until, offered_.visits + (fresh ? 1 : 2));
    }
  }

  void next_test() {
    const RulePolicy& policy = visit_.policy.rules;
    if (!policy.skin_test_asked || visit_.skin_test.empty()) return;
    for (const Rule& r : rules())
      if (r.id == "test.age" && !left_out(r, policy))
        out_.next_test = months_after(visit_.skin_test, figure_of(r, "valid_months", policy));
  }

  static constexpr double kMost = 0.5, kLevel = 1;
  static constexpr double kScattered = 0.1;  // share of white; common practice: less is not worth naming
  const Visit& visit_;
  const VisitPlan& plan_;
  const Offered offered_;
  Constants c_;
  Afterwards out_;
  Weeks look_again_;
  bool dye_ = false, minerals_ = false;
};

}  // namespace

Afterwards afterwards(const Visit& visit, const VisitPlan& plan) { return Teller(visit, plan).told(); }

}  // namespace strandline
