// Which rules an own bowl passes on one of its zones.
#pragma once

#include "rules/evaluate.h"

namespace strandline {

Verdict verdict_of(const Rule& rule, const Because& because, const Place& place, const std::string& zone);
// Into the verdict of the same rule, bowl and fact, where there is one.
void gather(std::vector<Verdict>& list, Verdict verdict);
void in_order(std::vector<Verdict>& list);

// Requires place.bowl. Stops and unanswered questions of its class here, limits that its own numbers pass.
std::vector<Verdict> passed(const Place& place, const std::string& zone);

}  // namespace strandline
