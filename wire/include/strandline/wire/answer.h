// What the doors answer: the engine's values with names, colours for screens and stable keys.
//
// Colour numbers are CIELAB D65/10°; sRGB is given under each of four lights, adapted to the screen's white.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/pipeline.h"
#include "strandline/reach.h"
#include "strandline/running.h"
#include "strandline/wire/decode.h"
#include "strandline/wire/json.h"
#include "strandline/wire/shelf_document.h"

namespace strandline::wire {

struct Rgb {
  std::string hex;            // "#6b4a35"
  bool out_of_gamut = false;  // the screen cannot show it; lightness and hue are kept
};

struct UnderLights {
  Rgb daylight, lamp, led, fluorescent;
};

struct FanColour {
  Lab lab;
  UnderLights srgb;  // daylight
};

struct PopulationView {
  std::string name;
  FibreKind kind = FibreKind::pigmented;
  double share = 0;
  Lab lab;
  UnderLights srgb;
  double level = 0;
  Tone tone = Tone::natural;
  double warmth = 0;
  Spread level_spread;
  std::vector<double> reflectance;  // 31 bands, 400…700 nm
};

struct ColourView {
  Lab lab;
  UnderLights srgb;
  double level = 0;
  Tone tone = Tone::natural;
  double warmth = 0;
  Spread level_spread;
  double contrast_levels = 0;
  double porosity = 1;
  double condition_left = 1;
  std::vector<FanColour> fan;
  std::vector<PopulationView> populations;
  std::vector<double> reflectance;
};

struct TargetView {
  Lab lab;
  UnderLights srgb;
  double level = 0;
  Tone tone = Tone::natural;
  bool leave = false;
  double weight = 1;
  std::optional<Tone> second_tone;
};

struct ZoneTarget {
  std::string zone;
  TargetView target;
};

// One zone as it is and as it will be. Likelihood and landing are there where the zone has a target.
struct ZoneView {
  std::string zone, bowl;
  double minutes = 0;
  bool reachable = true;
  Problems why_not;
  std::optional<double> likelihood;
  bool show_likelihood = false;
  bool simulated = false;
  std::optional<TargetView> target;
  ColourView today, planned;
  double lift_levels = 0, deposit = 0, exposure = 0;
  std::optional<Landing> landing;
  Problems doubt;  // what the spread comes from, the most first; empty where nothing is put on the zone
};

struct ZoneToday {
  std::string zone;
  ColourView today;
};

struct VerdictView {
  std::string rule, topic;
  Standing standing = Standing::house;
  Says says = Says::say;
  std::string source;
  std::vector<std::string> classes, zones;
  std::string bowl, fact;
  Params figures;
  std::vector<std::string> change, today;
};

// What the rules say, before any bowl: every answer that mixes something holds it.
struct VerdictsView {
  Go go = Go::go;
  std::vector<VerdictView> verdicts;
};
VerdictsView view(const Verdicts& verdicts);

struct PartView {
  std::string product, name;
  double grams = 0;
  std::optional<KnownBy> known_by;  // colour products
};

struct BowlView {
  std::string label, range, range_name;
  std::vector<PartView> parts;
  double minutes = 0;
  bool damp_hair = false;
  std::vector<std::string> zones;
  int step = 1;
  double grams = 0, cost = 0;
  double on_head_peroxide_percent = 0;
  Recipe recipe, certified, runner_up;
  double objective = 0, certified_objective = 0, rounded_objective = 0, refined_objective = 0, runner_up_objective = 0;
  std::vector<OtherRecipe> others;
  std::vector<Turn> turns;
  law::LimitReport limits;
  Problems why;
  std::vector<PartEffect> effects;
};

struct ReachCellView {
  double level = 0;
  Tone tone = Tone::natural;
  bool reachable = false;
  Lab nearest;
  Rgb srgb;         // of `nearest`, daylight
  Rgb wished_srgb;  // daylight
  double level_error = 0, tone_error = 0, contrast_levels = 0;
  Problems why;  // what stays where it is not reachable
};

struct ZoneReachView {
  std::string zone;
  std::vector<ReachCellView> cells;
  std::vector<Lab> corners;
  double recipes = 0;
};

struct ReachAnswer {
  VerdictsView rules;
  std::vector<ZoneReachView> zones;
};

struct AssessAnswer {
  std::vector<ZoneToday> zones;
  Problems notes;
};

struct AimAnswer {
  std::vector<ZoneTarget> targets;
};

struct PredictAnswer {
  VerdictsView rules;
  std::vector<ZoneView> zones;
  Problems notes;
};

struct AlternativeView {
  std::string axis;
  std::vector<BowlView> bowls;
  std::vector<ZoneView> zones;
  std::vector<Band> bands;
  double objective = 0, grams = 0, cost = 0;
};

struct FormulateAnswer {
  VerdictsView rules;
  std::vector<BowlView> bowls;
  std::vector<ZoneView> zones;
  double grams = 0, cost = 0;
  std::string currency;
  Problems why, notes;
  std::vector<Band> bands;
  SearchReport report;
  std::vector<AlternativeView> alternatives;
};

struct RouteStepView {
  std::string kind;
  std::vector<BowlView> bowls;
  bool check_after = false;
  std::vector<RouteStep::IfCheckShows> if_check_shows;
};

struct RouteVisitView {
  double weeks_after_last = 0;
  Reading regrowth_cm;
  std::vector<RouteStepView> steps;
  Timeline timeline;
  std::vector<ZoneView> zones;
};

struct RouteView {
  std::string kind;
  std::vector<RouteVisitView> visits;
  double objective = 0, after_first_visit = 0, grams = 0, cost = 0;
  bool reachable = false, standard = false, recommended = false;
  Problems why, notes;
};

// The whole of one visit's main job: plan and what-if answer this.
struct PlanAnswer {
  FormulateAnswer plan;
  Timeline timeline;
  std::vector<RouteView> routes;
  Afterwards after;
};

Rgb rgb(const Lab& daylight);
UnderLights under_lights(const Spectrum& reflectance);
// A colour that is known in daylight only: under another light it moves as `like` does, or as natural hair of a level
// and tone word.
UnderLights under_lights(const Lab& daylight, const Spectrum& like);
UnderLights under_lights(const Lab& daylight, double level, Tone tone);

AssessAnswer view(const Assessment& assessment);
AimAnswer view(const std::vector<Target>& targets);
PredictAnswer view(const Prediction& prediction, const std::vector<Target>& targets);
FormulateAnswer view(const Plan& plan, const std::vector<Target>& targets, const Shelf& shelf);
PlanAnswer view(const VisitPlan& plan, const Shelf& shelf);
BowlView view(const PlannedBowl& bowl, const Shelf& shelf);
ReachAnswer view(const std::vector<ZoneReach>& zones);

// Level × tone swatches for the picking of an aim: the colour each pair asks for.
struct ToneSwatch {
  double level = 0;
  Tone tone = Tone::natural;
  Lab lab;
  UnderLights srgb;
};
struct LevelsAnswer {
  std::vector<ToneSwatch> swatches;
};
LevelsAnswer levels_answer();

// A product of the shelf as a screen lists it.
struct ProductView {
  std::string id, range, name, code;
  ProductClass cls = ProductClass::permanent;
  double level = 0;
  Tone tone = Tone::natural;
  std::optional<KnownBy> known_by;  // colour products
  std::optional<SwatchHair> swatch_on;
  std::optional<Lab> lab;  // of the swatch, or what the name promises; none for clear and for a hue without a level
  std::optional<UnderLights> srgb;
  double peroxide_percent = 0;
  std::optional<double> stock_g;  // absent = not counted
  double price_per_g = 0;
};
struct ShelfAnswer {
  std::string id, title, currency;
  bool invented = false;
  std::vector<Range> ranges;
  std::vector<ProductView> products;
};
ShelfAnswer view(const Shelf& shelf);
ShelfAnswer view(const ShelfDocument& document);  // with the codes on the tubes

// Each answer as JSON with "schema": "strandline.<verb>/1".
Json answer_json(const AssessAnswer& answer);
Json answer_json(const AimAnswer& answer);
Json answer_json(const PredictAnswer& answer);
Json answer_json(const FormulateAnswer& answer);
Json answer_json(const PlanAnswer& answer);
Json answer_json(const ReachAnswer& answer);
Json answer_json(const Timeline& timeline);
Json answer_json(const Replanned& answer);
Json answer_json(const LevelsAnswer& answer);
Json answer_json(const ShelfAnswer& answer);

}  // namespace strandline::wire
