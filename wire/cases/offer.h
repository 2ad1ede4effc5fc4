// What a visit is answered first, and questions to ask of it: the way over several steps where one is recommended, else
// the plan.
#pragma once

#include <algorithm>
#include <limits>
#include <set>
#include <string>
#include <vector>

#include "strandline/pipeline.h"

namespace strandline::cases {

using C = ProductClass;

// Ends included.
struct Bound {
  double least = -std::numeric_limits<double>::infinity(), most = std::numeric_limits<double>::infinity();
  bool holds(double value) const { return value >= least - 1e-6 && value <= most + 1e-6; }
  bool meets(double from, double until) const { return until > 0 && from <= most + 1e-6 && until >= least - 1e-6; }
};

using Zones = std::vector<std::string>;

// A bowl as a case asks for it. Shares are of the shades: grams of a tone over the grams of all shades.
struct Want {
  std::vector<C> cls;
  Bound developer, ratio, minutes, level;
  std::vector<std::pair<Tone, Bound>> shares = {};
  std::vector<Tone> only = {};  // shades of other tones are none of it; empty = any
  Bound clear = {0, 0.5};
  Bound correctors = {0, 0.25};
};

class Offer {
 public:
  Offer(const Visit& visit, const VisitPlan& plan);

  const PlannedBowl* on(const std::string& zone) const;  // the last that colours it; null where it is left
  bool nothing(const std::string& zone) const;           // no bowl in any step
  // A bowl of an earlier step.
  const PlannedBowl* first(const std::string& zone) const;
  bool colours(const Zones& zones, const Want& want) const;  // each zone by a bowl like this
  bool opens(const Zones& zones, const Want& want) const;    // likewise in an earlier step
  bool share_bowl(const Zones& zones) const;
  // Over every bowl of every step.
  bool none(const std::vector<C>& classes) const;
  bool none_on(const Zones& zones, const std::vector<C>& classes) const;
  double strongest() const;  // % in the bottle
  double strongest_on(const std::string& zone) const;
  bool no_shade(const Zones& zones, Bound level) const;  // no shade of such a level on them
  bool not_alone(const Zones& zones, Tone tone) const;   // no bowl whose shades are all of this tone
  double minutes(const std::string& zone) const;
  double level(const std::string& zone) const;
  double contrast(const std::string& zone) const;
  const ZonePlan& zone(const std::string& id) const;
  double grams(const Zones& zones) const;  // of the bowls that colour them, each once
  double grams_of(C cls) const;
  double share(const PlannedBowl& bowl, Tone tone) const;
  bool starts_before(const std::string& early, const std::string& late) const;
  bool says(const std::string& code) const;  // a rule, a reason, a note, or what is told of afterwards
  bool looks() const;                        // a step is looked at before the next is mixed
  bool stopped() const { return plan.verdicts.go == Go::stopped && plan.plan.bowls.empty() && !way; }
  std::string describe() const;  // bowls and what zones come to, for who reads a failure
  int visits() const { return way ? static_cast<int>(way->visits.size()) : 1; }

  const Visit& visit;
  const VisitPlan& plan;
  const Route* way = nullptr;
  std::vector<std::vector<PlannedBowl>> steps;  // of the first visit
  std::vector<ZonePlan> zones;                  // after it
  const Timeline* timeline = nullptr;

 private:
  bool like(const PlannedBowl& bowl, double minutes, const Want& want) const;
  double asked_minutes(const PlannedBowl& bowl, const std::string& zone, const Zones& asked) const;
  const Product& product(const Part& part) const;
  std::vector<const PlannedBowl*> all() const;
  std::set<std::string> told;
};

}  // namespace strandline::cases
