// The fact that ends a visit: its document as it was then.
#pragma once

#include "strandline/salon/visits.h"

namespace strandline::salon {

inline constexpr const char* end_kind = "visit.handed_in";

// Nothing = it is a draft, or there is no such visit.
Result<std::optional<store::Fact>> end_of(World& world, const std::string& visit_id);
// Problem visit_erased: its key was destroyed.
Result<SavedVisit> as_handed_in(const store::Fact& end);

}  // namespace strandline::salon
