// formulate: head + aim + shelf + limits → bowls, the reason, the runner-up, and why the search stopped.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "strandline/aim.h"
#include "strandline/formula.h"
#include "strandline/grams.h"
#include "strandline/law.h"
#include "strandline/predict.h"
#include "strandline/shelf.h"

namespace strandline {

// House rules and ceilings that concern a formula. Every number has a source in knowledge/policy.
struct FormulaPolicy {
  double on_head_peroxide_max_percent = 12;  // law
  double scalp_lightener_max_percent = 6;    // bottle strength, common practice
  double failed_stretch_max_percent = 3;     // below 6 %: common practice after a failed wet stretch
  double straightened_max_percent = 6;       // bottle strength within the weeks below
  double straightened_weeks = 8;
  double lightened_max_percent = 3;  // bottle strength over lightened hair: it is toned, not lifted again
  double covered_contrast_levels = 1;
  int bowls_max = 4;
  double part_min_g = 3;
  double gram_step = 0.5;
  double waste_share = 0.05;
  double head_factor = 1;       // this client's last leftover: < 1 mixes less
  double porosity_max = 2.8;    // condition ceiling: no lift beyond
  int visits_most = 3;          // a route takes no more
  double levels_apart_max = 1;  // of two shades in one bowl; clear and correctors have no level
  // What no reading can tell apart, levels of expected loss: of all plans within it the plainest is taken, as long as
  // no zone is worse by more than the second.
  double indifference_levels = 0.15;
  double zone_indifference_levels = 0.25;
  double clear_max_share = 1;  // of the colour part; what the rules of the visit leave (limited())
  double weeks_between_visits = 4;
};

struct FormulateOptions {
  int scenarios = kSearchScenarios;
  ParallelFor parallel = serial_for;
  std::function<bool()> cancelled = [] { return false; };
  // The head with what the rules leave open on its hair as it is by then; none: the limits it came with.
  std::function<Head(Head)> rules = {};
};

// Why a bowl is as it is: code + parameters, worded at the door. "natural_share_for_white", "counter_tone",
// "average_rule", "developer_for_lift", "one_bowl_serves", "own_bowl" …
using Reasons = Problems;

struct Share {
  std::string product;
  int eighths = 0;
};

// A recipe of the certified domain before it becomes grams.
struct Recipe {
  std::string range;
  std::vector<Share> shares;  // of the colour part, eighths, by product id
  double developer_percent = 0;
  double ratio = 1;
  double minutes = 0;
};

// The result without one colour part, the rest of the bowl weighed up to the same grams: what the part is there for.
// Nominal, mean over the bowl's zones by their weight.
struct PartEffect {
  std::string product;
  double level_without = 0;  // minus the level with it: positive = this part darkens
  double warm_without = 0;   // a*b* units along the warm axis: positive = this part cools
  double red_without = 0;    // a*b* units across it: positive = this part takes red away
  double loss_without = 0;   // expected loss, levels: how much worse the bowl is without it
};

// A misreading under which the runner-up would be the better bowl.
struct Turn {
  std::string reading;  // "level" (levels), "white" (share), "porosity" (steps)
  double by = 0;
  double better_by = 0;  // levels of expected loss
};

// Another formula for the same zones.
struct OtherRecipe {
  Recipe recipe;
  double objective = 0;  // as PlannedBowl::objective
};

struct PlannedBowl {
  Bowl bowl;
  std::vector<OnZone> on;  // how long on each of its zones; what every prediction of them is made for
  Recipe recipe;
  double objective = 0;  // expected loss in levels, weighted over its zones
  Recipe certified;  // that which costs least; `recipe` is the plainest near it. Without shares where bowls became one
  double certified_objective = 0;
  double rounded_objective = 0;  // the same after rounding to grams
  double refined_objective = 0;  // of the best found beyond eighths and three shades; a local best
  Recipe runner_up;
  double runner_up_objective = 0;
  // Other tubes or another strength: the plainest that are as near, then by objective; ten at most.
  std::vector<OtherRecipe> others;
  std::vector<Turn> turns;  // what would change the answer; empty where nothing tried does
  double grams = 0, cost = 0;
  double on_head_peroxide_percent = 0;
  law::LimitReport limits;  // every regulated row touched
  Reasons why;
  std::vector<PartEffect> effects;  // one per colour part, in the order of the parts; none where it is the only one
};

// The bowl on its zones, each for as long as it is on there.
Step step_of(const PlannedBowl& bowl);
std::vector<Step> steps_of(const std::vector<PlannedBowl>& bowls);

struct ZonePlan {
  ZoneResult result;
  std::string bowl;       // label, empty = left as it is
  double minutes = 0;     // that bowl is on it, from its last touch
  bool reachable = true;  // within half a level and the tone, white covered
  Reasons why_not;        // "colour_does_not_lift_colour", "lift_limit", "white_cover", "condition", "law" …
};

// Two neighbouring zones that come out half a level or more apart, where they meet.
struct Band {
  std::string lighter, darker;  // zones
  double levels = 0;            // between them afterwards
  double today = 0;             // between them now, negative where the darker one is the lighter now
  double wished = 0;            // between their wishes, 0 where one of them has none
};

struct SearchReport {
  std::string stopped = "exhausted";  // or "cancelled"
  // What was asked: zones with a wish in groups that share a bowl's place, process settings of the shelf, scenarios,
  // and how many bowls at most.
  int zones = 0, groups = 0, settings = 0, scenarios = 0, bowls_most = 0;
  // What it took: recipe and setting pairs of the domain; sets of groups searched; then, of all of them together, boxes
  // of many recipes bounded, single recipes bounded, and recipe × zone × scenario evaluated in full.
  long long recipes = 0, sets = 0, boxes = 0, bounds = 0, evaluations = 0;
  double objective = 0, bound = 0, gap = 0;
  double plain_gap = 0;  // of the objective: what the plainest formulas cost above the certified best ones
  double uneven = 0;     // of the objective: the price of unevenness where spans meet, settled among the formulas kept
};

// Another plan: worse on the whole, better in one way.
struct Alternative {
  // "lighter_first" (seldom too dark; to be deepened at the basin), "gentler" (weaker developer), "simpler" (fewer
  // tubes), "fewer_bowls", "cheaper", "later_on_lengths", "quicker" (shorter time), "softer_line" (no permanent colour:
  // regrowth shows less of a line); "closer" (finer grams or a fourth shade: nearer to the wish than the certified
  // best, but no best itself); "as_wished" (to the letter, where the plan takes regrowth to what its lengths come to).
  std::string axis;
  std::vector<PlannedBowl> bowls;
  std::vector<ZonePlan> zones;
  std::vector<Band> bands;
  double objective = 0;  // comparable with SearchReport::objective
  double grams = 0, cost = 0;
};

struct Plan {
  std::vector<PlannedBowl> bowls;
  std::vector<ZonePlan> zones;
  double grams = 0, cost = 0;
  std::string currency;
  Reasons why;
  Problems notes;  // cautions, bands, unknown percentages, stock that runs out
  std::vector<Band> bands;
  SearchReport report;
  std::vector<Alternative> alternatives;
};

// Requires check(head), check(shelf) empty and targets from aim(). Problems: empty shelf, no range usable on this head.
Result<Plan> formulate(const Head& head, const std::vector<Target>& targets, const Shelf& shelf,
                       const FormulaPolicy& policy, const FormulateOptions& options = {});

}  // namespace strandline
