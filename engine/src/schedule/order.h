// House rules for the order of application, as common practice has them.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "strandline/schedule.h"

namespace strandline {

struct OrderRule {
  std::uint32_t later = 0;  // applications (bits) that the house starts no earlier than this one
  std::string reason;       // code of the rule that puts it before or after another; empty where none does
};

// One rule per application, in the order given. Lightening and cover are two orders that do not bind each
// other.
std::vector<OrderRule> order_rules(const std::vector<Application>& applications, const SchedulePolicy& policy);

}  // namespace strandline
