// Whether a rule speaks of a place, and what the rules of a place come to.
#pragma once

#include "rules/place.h"

namespace strandline {

// A number of a rule, as the house has set it where it may; no limit where the rule has no such figure.
double figure_of(const Rule& rule, std::string_view name, const RulePolicy& policy);
std::string figure_text(double value);

bool left_out(const Rule& rule, const RulePolicy& policy);

// Why a rule speaks: the fact that decided, and its number where it is one.
struct Because {
  std::string_view fact;
  std::optional<double> found;
};
// `rule` is one of rules(). Empty where it is left out, is of another country, class or stretch of hair, or its
// condition does not hold.
std::optional<Because> speaks(const Rule& rule, const Place& place);

// Holds wherever its class is used: a limit, but nothing to tell about this client.
bool of_class_alone(const Rule& rule);

// The rules that do not depend on the wish, as limits of this range here. Highest minimum and lowest maximum win; where
// they cross the range is closed.
RangeLimits limits_of(const Place& place);

// Every range of the shelf on every zone that counts, with its wish.
struct Survey {
  std::vector<ZoneRef> refs;
  std::vector<Target> targets;  // of the wish, empty where there is none
  double white_apart = 0;
};
Survey survey(const Visit& visit);
const Target* wish_for(const Survey& survey, const std::string& zone);
// Zones with a wish that is not to be left, or all where there is none.
bool counts(const Survey& survey, const std::string& zone);

}  // namespace strandline
