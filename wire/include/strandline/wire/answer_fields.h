// Keys of the answers. `always` marks what every answer holds.
#pragma once

#include "strandline/wire/answer.h"
#include "strandline/wire/visit_fields.h"

namespace strandline::wire {

inline constexpr Rules always{.required = true};

template <>
struct Fields<Problem> {
  static constexpr std::string_view name = "Problem";
  static constexpr auto list =
      std::make_tuple(field("code", &Problem::code, always), field("path", &Problem::path, always),
                      field("params", &Problem::params, always));
};

template <>
struct Words<Standing> {
  static constexpr std::string_view name = "Standing";
  static constexpr WordList<Standing, 3> list{
      {{Standing::law, "law"}, {Standing::floor, "floor"}, {Standing::house, "house"}}};
};

template <>
struct Words<Says> {
  static constexpr std::string_view name = "Says";
  static constexpr WordList<Says, 5> list{{{Says::stop, "stop"},
                                           {Says::ceiling, "ceiling"},
                                           {Says::restrict, "restrict"},
                                           {Says::ask, "ask"},
                                           {Says::say, "say"}}};
};

template <>
struct Words<Go> {
  static constexpr std::string_view name = "Go";
  static constexpr WordList<Go, 3> list{{{Go::go, "go"}, {Go::restricted, "restricted"}, {Go::stopped, "stopped"}}};
};

template <>
struct Fields<VerdictView> {
  static constexpr std::string_view name = "Verdict";
  using V = VerdictView;
  static constexpr auto list = std::make_tuple(
      field("rule", &V::rule, always), field("topic", &V::topic, always), field("standing", &V::standing, always),
      field("says", &V::says, always), field("source", &V::source, always), field("classes", &V::classes, always),
      field("zones", &V::zones, always),
      field("bowl", &V::bowl, {.required = true, .note = "own bowl that passes the rule; empty = of the visit"}),
      field("fact", &V::fact, {.required = true, .note = "what decided"}),
      field("figures", &V::figures, {.required = true, .note = "limits; found = the number that decided"}),
      field("change", &V::change, {.required = true, .note = "what would change it"}),
      field("today", &V::today, {.required = true, .note = "what can be done today"}));
};

template <>
struct Fields<VerdictsView> {
  static constexpr std::string_view name = "Verdicts";
  using V = VerdictsView;
  static constexpr auto list =
      std::make_tuple(field("go", &V::go, {.required = true, .note = "stopped: nothing may be mixed as asked"}),
                      field("verdicts", &V::verdicts, always));
};

template <>
struct Fields<Spread> {
  static constexpr std::string_view name = "Spread";
  static constexpr auto list = std::make_tuple(field("p10", &Spread::p10, always), field("p50", &Spread::p50, always),
                                               field("p90", &Spread::p90, always));
};

template <>
struct Fields<Rgb> {
  static constexpr std::string_view name = "Rgb";
  static constexpr auto list =
      std::make_tuple(field("hex", &Rgb::hex, always), field("out_of_gamut", &Rgb::out_of_gamut, always));
};

template <>
struct Fields<UnderLights> {
  static constexpr std::string_view name = "UnderLights";
  static constexpr auto list =
      std::make_tuple(field("daylight", &UnderLights::daylight, always), field("lamp", &UnderLights::lamp, always),
                      field("led", &UnderLights::led, always), field("fluorescent", &UnderLights::fluorescent, always));
};

template <>
struct Fields<FanColour> {
  static constexpr std::string_view name = "FanColour";
  static constexpr auto list =
      std::make_tuple(field("lab", &FanColour::lab, always), field("srgb", &FanColour::srgb, always));
};

template <>
struct Fields<PopulationView> {
  static constexpr std::string_view name = "PopulationView";
  using V = PopulationView;
  static constexpr auto list = std::make_tuple(
      field("name", &V::name, always), field("kind", &V::kind, always), field("share", &V::share, always),
      field("lab", &V::lab, always), field("srgb", &V::srgb, always), field("level", &V::level, always),
      field("tone", &V::tone, always), field("warmth", &V::warmth, always),
      field("level_spread", &V::level_spread, always), field("reflectance", &V::reflectance, always));
};

template <>
struct Fields<ColourView> {
  static constexpr std::string_view name = "ColourView";
  using V = ColourView;
  static constexpr auto list =
      std::make_tuple(field("lab", &V::lab, always), field("srgb", &V::srgb, always), field("level", &V::level, always),
                      field("tone", &V::tone, always), field("warmth", &V::warmth, always),
                      field("level_spread", &V::level_spread, always),
                      field("contrast_levels", &V::contrast_levels, always), field("porosity", &V::porosity, always),
                      field("condition_left", &V::condition_left, always), field("fan", &V::fan, always),
                      field("populations", &V::populations, always), field("reflectance", &V::reflectance, always));
};

template <>
struct Fields<TargetView> {
  static constexpr std::string_view name = "TargetView";
  using V = TargetView;
  static constexpr auto list =
      std::make_tuple(field("lab", &V::lab, always), field("srgb", &V::srgb, always), field("level", &V::level, always),
                      field("tone", &V::tone, always), field("leave", &V::leave, always),
                      field("weight", &V::weight, always), field("second_tone", &V::second_tone));
};

template <>
struct Fields<ZoneTarget> {
  static constexpr std::string_view name = "ZoneTarget";
  static constexpr auto list = std::make_tuple(field("zone", &ZoneTarget::zone, always), inlined(&ZoneTarget::target));
};

template <>
struct Fields<Landing> {
  static constexpr std::string_view name = "Landing";
  using L = Landing;
  static constexpr auto list = std::make_tuple(
      field("likelihood", &L::likelihood, always), field("level_likelihood", &L::level_likelihood, always),
      field("tone_likelihood", &L::tone_likelihood, always), field("cover_likelihood", &L::cover_likelihood, always),
      field("show_number", &L::show_number, always), field("simulated", &L::simulated, always),
      field("delta_e_2000", &L::delta_e_2000, always), field("level_error", &L::level_error, always),
      field("tone_error", &L::tone_error, always), field("expected_loss", &L::expected_loss, always));
};

template <>
struct Fields<ZoneView> {
  static constexpr std::string_view name = "ZoneView";
  using V = ZoneView;
  static constexpr auto list = std::make_tuple(
      field("zone", &V::zone, always), field("bowl", &V::bowl, always),
      field("minutes", &V::minutes, {.required = true, .note = "the bowl is on it, from its last touch; 0: no bowl"}),
      field("reachable", &V::reachable, always), field("why_not", &V::why_not, always),
      field("likelihood", &V::likelihood), field("show_likelihood", &V::show_likelihood, always),
      field("simulated", &V::simulated, always), field("target", &V::target), field("today", &V::today, always),
      field("planned", &V::planned, always), field("lift_levels", &V::lift_levels, always),
      field("deposit", &V::deposit, always), field("exposure", &V::exposure, always), field("landing", &V::landing),
      field("doubt", &V::doubt,
            {.required = true, .note = "what the spread comes from, the most first: code and percent"}));
};

template <>
struct Fields<ZoneToday> {
  static constexpr std::string_view name = "ZoneToday";
  static constexpr auto list =
      std::make_tuple(field("zone", &ZoneToday::zone, always), field("today", &ZoneToday::today, always));
};

template <>
struct Fields<PartView> {
  static constexpr std::string_view name = "PartView";
  static constexpr auto list =
      std::make_tuple(field("product", &PartView::product, always), field("name", &PartView::name, always),
                      field("grams", &PartView::grams, always), field("known_by", &PartView::known_by));
};

template <>
struct Fields<Share> {
  static constexpr std::string_view name = "Share";
  static constexpr auto list =
      std::make_tuple(field("product", &Share::product, always), field("eighths", &Share::eighths, always));
};

template <>
struct Fields<Recipe> {
  static constexpr std::string_view name = "Recipe";
  using R = Recipe;
  static constexpr auto list =
      std::make_tuple(field("range", &R::range, always), field("shares", &R::shares, always),
                      field("developer_percent", &R::developer_percent, always), field("ratio", &R::ratio, always),
                      field("minutes", &R::minutes, always));
};

template <>
struct Fields<law::LimitResult> {
  static constexpr std::string_view name = "LimitResult";
  using R = law::LimitResult;
  static constexpr auto list =
      std::make_tuple(field("entry", &R::entry, always), field("substance", &R::substance, always),
                      field("on_head_percent", &R::on_head_percent), field("at_least", &R::at_least, always),
                      field("cap", &R::cap), field("as", &R::as, always), field("status", &R::status, always),
                      field("nitrosamine_conditions", &R::nitrosamine_conditions, always));
};

template <>
struct Fields<law::SumResult> {
  static constexpr std::string_view name = "SumResult";
  using R = law::SumResult;
  static constexpr auto list =
      std::make_tuple(field("rule", &R::rule, always), field("entries", &R::entries, always), field("total", &R::total),
                      field("at_least", &R::at_least, always), field("max", &R::max, always),
                      field("status", &R::status, always), field("scope_doubtful", &R::scope_doubtful, always));
};

template <>
struct Fields<law::LimitReport> {
  static constexpr std::string_view name = "LimitReport";
  using R = law::LimitReport;
  static constexpr auto list =
      std::make_tuple(field("overall", &R::overall, always), field("entries", &R::entries, always),
                      field("sums", &R::sums, always), field("not_fully_declared", &R::not_fully_declared, always));
};

template <>
struct Fields<PartEffect> {
  static constexpr std::string_view name = "PartEffect";
  using E = PartEffect;
  static constexpr auto list =
      std::make_tuple(field("product", &E::product, always), field("level_without", &E::level_without, always),
                      field("warm_without", &E::warm_without, always), field("red_without", &E::red_without, always),
                      field("loss_without", &E::loss_without, always));
};

template <>
struct Fields<Turn> {
  static constexpr std::string_view name = "Turn";
  static constexpr auto list = std::make_tuple(field("reading", &Turn::reading, always), field("by", &Turn::by, always),
                                               field("better_by", &Turn::better_by, always));
};

template <>
struct Fields<OtherRecipe> {
  static constexpr std::string_view name = "OtherRecipe";
  static constexpr auto list = std::make_tuple(field("recipe", &OtherRecipe::recipe, always),
                                               field("objective", &OtherRecipe::objective, always));
};

template <>
struct Fields<BowlView> {
  static constexpr std::string_view name = "BowlView";
  using V = BowlView;
  static constexpr auto list = std::make_tuple(
      field("label", &V::label, always), field("range", &V::range, always), field("range_name", &V::range_name, always),
      field("parts", &V::parts, always), field("minutes", &V::minutes, always),
      field("damp_hair", &V::damp_hair, always), field("zones", &V::zones, always), field("step", &V::step, always),
      field("grams", &V::grams, always), field("cost", &V::cost, always),
      field("on_head_peroxide_percent", &V::on_head_peroxide_percent, always), field("recipe", &V::recipe, always),
      field("objective", &V::objective, always), field("certified", &V::certified, always),
      field("certified_objective", &V::certified_objective, always),
      field("rounded_objective", &V::rounded_objective, always),
      field("refined_objective", &V::refined_objective, always), field("others", &V::others, always),
      field("turns", &V::turns, always), field("runner_up", &V::runner_up, always),
      field("runner_up_objective", &V::runner_up_objective, always), field("limits", &V::limits, always),
      field("why", &V::why, always), field("effects", &V::effects, always));
};

template <>
struct Fields<SearchReport> {
  static constexpr std::string_view name = "SearchReport";
  using R = SearchReport;
  static constexpr auto list = std::make_tuple(
      field("stopped", &R::stopped, always), field("zones", &R::zones, always), field("groups", &R::groups, always),
      field("settings", &R::settings, always), field("scenarios", &R::scenarios, always),
      field("bowls_most", &R::bowls_most, always), field("recipes", &R::recipes, always),
      field("sets", &R::sets, always), field("boxes", &R::boxes, always), field("bounds", &R::bounds, always),
      field("evaluations", &R::evaluations, always), field("objective", &R::objective, always),
      field("bound", &R::bound, always), field("gap", &R::gap, always), field("uneven", &R::uneven, always),
      field("plain_gap", &R::plain_gap, always));
};

template <>
struct Fields<AssessAnswer> {
  static constexpr std::string_view name = "AssessAnswer", verb = "assess";
  static constexpr auto list =
      std::make_tuple(field("zones", &AssessAnswer::zones, always), field("notes", &AssessAnswer::notes, always));
};

template <>
struct Fields<AimAnswer> {
  static constexpr std::string_view name = "AimAnswer", verb = "aim";
  static constexpr auto list = std::make_tuple(field("targets", &AimAnswer::targets, always));
};

template <>
struct Fields<PredictAnswer> {
  static constexpr std::string_view name = "PredictAnswer", verb = "predict";
  static constexpr auto list =
      std::make_tuple(inlined(&PredictAnswer::rules), field("zones", &PredictAnswer::zones, always),
                      field("notes", &PredictAnswer::notes, always));
};

template <>
struct Fields<Band> {
  static constexpr std::string_view name = "Band";
  static constexpr auto list =
      std::make_tuple(field("lighter", &Band::lighter, always), field("darker", &Band::darker, always),
                      field("levels", &Band::levels, always), field("today", &Band::today, always),
                      field("wished", &Band::wished, always));
};

template <>
struct Fields<AlternativeView> {
  static constexpr std::string_view name = "AlternativeView";
  using V = AlternativeView;
  static constexpr auto list = std::make_tuple(field("axis", &V::axis, always), field("bowls", &V::bowls, always),
                                               field("zones", &V::zones, always), field("bands", &V::bands, always),
                                               field("objective", &V::objective, always),
                                               field("grams", &V::grams, always), field("cost", &V::cost, always));
};

template <>
struct Fields<ReachCellView> {
  static constexpr std::string_view name = "ReachCellView";
  using V = ReachCellView;
  static constexpr auto list =
      std::make_tuple(field("level", &V::level, always), field("tone", &V::tone, always),
                      field("reachable", &V::reachable, always), field("nearest", &V::nearest, always),
                      field("srgb", &V::srgb, always), field("wished_srgb", &V::wished_srgb, always),
                      field("level_error", &V::level_error, always), field("tone_error", &V::tone_error, always),
                      field("contrast_levels", &V::contrast_levels, always), field("why", &V::why, always));
};

template <>
struct Fields<ZoneReachView> {
  static constexpr std::string_view name = "ZoneReachView";
  using V = ZoneReachView;
  static constexpr auto list =
      std::make_tuple(field("zone", &V::zone, always), field("cells", &V::cells, always),
                      field("corners", &V::corners, always), field("recipes", &V::recipes, always));
};

template <>
struct Fields<ReachAnswer> {
  static constexpr std::string_view name = "ReachAnswer", verb = "reach";
  static constexpr auto list =
      std::make_tuple(inlined(&ReachAnswer::rules), field("zones", &ReachAnswer::zones, always));
};

template <>
struct Fields<FormulateAnswer> {
  static constexpr std::string_view name = "FormulateAnswer", verb = "formulate";
  using A = FormulateAnswer;
  static constexpr auto list = std::make_tuple(
      inlined(&A::rules), field("bowls", &A::bowls, always), field("zones", &A::zones, always),
      field("grams", &A::grams, always), field("cost", &A::cost, always), field("currency", &A::currency, always),
      field("why", &A::why, always), field("notes", &A::notes, always), field("bands", &A::bands, always),
      field("report", &A::report, always), field("alternatives", &A::alternatives, always));
};

template <>
struct Fields<CheckChoice> {
  static constexpr std::string_view name = "CheckChoice";
  using C = CheckChoice;
  static constexpr auto list = std::make_tuple(
      field("level", &C::level, always), field("likelihood", &C::likelihood, always), field("go_on", &C::go_on, always),
      field("recipe", &C::recipe, always), field("expected_loss", &C::expected_loss, always));
};

template <>
struct Fields<RouteStep::IfCheckShows> {
  static constexpr std::string_view name = "IfCheckShows";
  using I = RouteStep::IfCheckShows;
  static constexpr auto list = std::make_tuple(field("bowl", &I::bowl, always), field("zone", &I::zone, always),
                                               field("choices", &I::choices, always));
};

template <>
struct Fields<RouteStepView> {
  static constexpr std::string_view name = "RouteStep";
  using V = RouteStepView;
  static constexpr auto list = std::make_tuple(field("kind", &V::kind, always), field("bowls", &V::bowls, always),
                                               field("check_after", &V::check_after, always),
                                               field("if_check_shows", &V::if_check_shows, always));
};

template <>
struct Fields<RouteVisitView> {
  static constexpr std::string_view name = "RouteVisit";
  using V = RouteVisitView;
  static constexpr auto list = std::make_tuple(
      field("weeks_after_last", &V::weeks_after_last, always), field("regrowth_cm", &V::regrowth_cm, always),
      field("steps", &V::steps, always), field("timeline", &V::timeline, always), field("zones", &V::zones, always));
};

template <>
struct Fields<RouteView> {
  static constexpr std::string_view name = "Route";
  using V = RouteView;
  static constexpr auto list = std::make_tuple(
      field("kind", &V::kind, always), field("visits", &V::visits, always), field("objective", &V::objective, always),
      field("after_first_visit", &V::after_first_visit, always), field("grams", &V::grams, always),
      field("cost", &V::cost, always), field("reachable", &V::reachable, always),
      field("standard", &V::standard, always), field("recommended", &V::recommended, always),
      field("why", &V::why, always), field("notes", &V::notes, always));
};

template <>
struct Fields<Weeks> {
  static constexpr std::string_view name = "Weeks";
  static constexpr auto list =
      std::make_tuple(field("from", &Weeks::from, always), field("until", &Weeks::until, always));
};

template <>
struct Fields<Afterwards> {
  static constexpr std::string_view name = "Afterwards";
  using A = Afterwards;
  static constexpr auto list = std::make_tuple(
      field("line", &A::line, {.required = true, .note = "weeks until new growth draws a line; both 0: none"}),
      field("lasts", &A::lasts, {.required = true, .note = "weeks until colour that fades is due again; both 0: none"}),
      field("rebook", &A::rebook, {.required = true, .note = "weeks until the next visit"}),
      field("visits_from", &A::visits_from, always), field("visits_until", &A::visits_until, always),
      field("next_test", &A::next_test, always), field("told", &A::told, always));
};

template <>
struct Fields<PlanAnswer> {
  static constexpr std::string_view name = "PlanAnswer", verb = "plan";
  static constexpr auto list =
      std::make_tuple(inlined(&PlanAnswer::plan), field("timeline", &PlanAnswer::timeline, always),
                      field("routes", &PlanAnswer::routes, always), field("after", &PlanAnswer::after, always));
};

template <>
struct Fields<ToneSwatch> {
  static constexpr std::string_view name = "ToneSwatch";
  static constexpr auto list =
      std::make_tuple(field("level", &ToneSwatch::level, always), field("tone", &ToneSwatch::tone, always),
                      field("lab", &ToneSwatch::lab, always), field("srgb", &ToneSwatch::srgb, always));
};

template <>
struct Fields<LevelsAnswer> {
  static constexpr std::string_view name = "LevelsAnswer", verb = "levels";
  static constexpr auto list = std::make_tuple(field("swatches", &LevelsAnswer::swatches, always));
};

template <>
struct Fields<ProductView> {
  static constexpr std::string_view name = "ProductView";
  using V = ProductView;
  static constexpr auto list = std::make_tuple(
      field("id", &V::id, always), field("range", &V::range, always), field("name", &V::name, always),
      field("code", &V::code, always), field("cls", &V::cls, always), field("level", &V::level, always),
      field("tone", &V::tone, always), field("known_by", &V::known_by), field("swatch_on", &V::swatch_on),
      field("lab", &V::lab), field("srgb", &V::srgb), field("peroxide_percent", &V::peroxide_percent, always),
      field("stock_g", &V::stock_g), field("price_per_g", &V::price_per_g, always));
};

template <>
struct Fields<ShelfAnswer> {
  static constexpr std::string_view name = "ShelfAnswer", verb = "shelf";
  using A = ShelfAnswer;
  static constexpr auto list =
      std::make_tuple(field("id", &A::id, always), field("title", &A::title, always),
                      field("currency", &A::currency, always), field("invented", &A::invented, always),
                      field("ranges", &A::ranges, always), field("products", &A::products, always));
};

}  // namespace strandline::wire
