// routes: where one bowl cannot give the wish, the way that can: soften, fill, remove or lighten first, then colour or
// tone; over several visits where the hair needs them.
#pragma once

#include "strandline/formulate.h"
#include "strandline/schedule.h"

namespace strandline {

// What to mix when the check after a step shows this level: kept ready, mixed only then.
struct CheckChoice {
  double level = 0;       // as the check shows it, in half levels
  double likelihood = 0;  // share of the scenarios that show it, 0…1
  bool go_on = false;     // darker than it shall be by then: the first step is not done yet; no recipe
  Recipe recipe;
  double expected_loss = 0;  // levels, where it shows
};

// Kind of a step, or of a way, whose bowls do different things side by side.
inline constexpr std::string_view kSeveral = "several";
// Reason of a bowl that colours the hair between packets while they develop.
inline constexpr std::string_view kBesidePackets = "beside_packets";

// One process of a visit. The hair is rinsed before the next.
struct RouteStep {
  std::string kind;  // "chelate", "soften", "fill", "remove", "lighten", "several", "colour", "tone"
  std::vector<PlannedBowl> bowls;
  bool check_after = false;  // look at the hair before the next is mixed
  // Of the step after a check: what each of its bowls becomes at each level the check may show, by bowl label.
  struct IfCheckShows {
    std::string bowl, zone;  // the zone that is looked at
    std::vector<CheckChoice> choices;
  };
  std::vector<IfCheckShows> if_check_shows;
};

struct RouteVisit {
  double weeks_after_last = 0;
  Reading regrowth_cm;  // grown since the visit before: natural hair at the scalp that these bowls leave out
  std::vector<RouteStep> steps;
  Timeline timeline;            // of all its steps; empty until the pipeline adds it
  std::vector<ZonePlan> zones;  // after this visit
};

struct Route {
  std::string kind;  // of its first step
  std::vector<RouteVisit> visits;
  double objective = 0;  // comparable with SearchReport::objective: prices of steps and visits included
  double after_first_visit = 0;
  double grams = 0, cost = 0;
  bool reachable = false;  // every wish lands at the end
  bool standard = false;   // what the trade does with such hair: minerals off, colour out, fill, lighten before a tone
  bool recommended = false;  // stands first: the best of all ways, or the standard one where no tint alone may do it
  Reasons why;
  Problems notes;
};

// Every route that fits the head, best first: by one opening each, and where different zones are served best by
// different ones, by these side by side. Empty where none of the steps has a place or a product. `direct` is the plan
// of formulate() for the same wishes. The first steps come from a stated grid (range × strength × time); the last step
// is the certified search from where each leaves the hair.
Result<std::vector<Route>> routes(const Head& head, const std::vector<Target>& targets, const Shelf& shelf,
                                  const FormulaPolicy& policy, const Plan& direct,
                                  const FormulateOptions& options = {});

}  // namespace strandline
