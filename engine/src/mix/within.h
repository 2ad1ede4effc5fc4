// What the rules of a visit leave open on a zone (RangeLimits), asked by every search.
#pragma once

#include "mix/groups.h"
#include "mix/settings.h"

namespace strandline {

// Null where the rules set no limit.
const RangeLimits* limits_on(const Span& span, const Range& range);

// Why the rules close this setting on the span: the id of the rule, "rule_limit" for one of its numbers, or empty.
std::string closed_by_rules(const Setting& setting, const Span& span);

// So many minutes from the last touch are within the longest the rules allow, and leave every kind of fibre of the zone
// within its condition.
bool within_rules(const Setting& setting, double minutes, const SearchZone& zone);

// The times of the range that are.
std::vector<double> times_within(const Setting& setting, const SearchZone& zone);

}  // namespace strandline
