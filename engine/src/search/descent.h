// The first stage of the search: a branch is divided while the bound of its box says that something in it may matter.
#pragma once

#include <functional>
#include <vector>

#include "search/terrain.h"

namespace strandline {

struct Descent {
  std::vector<Branch> singles;  // recipes whose box may matter
  std::vector<Branch> left;     // what was not divided further
  long long boxes = 0;          // bounded, once for each zone that was looked at
};

// Divides the branch, whatever of it has the lowest bound first, until nothing of it lies at or below `limit`, or so
// much has been done that others should have their turn. What lies above the limit is dropped. Where the plainest
// are asked for they go first, and what is less plain than `frontier` is left.
Descent descend(const Terrain& terrain, const Branch& from, double limit, std::uint64_t frontier,
                const std::function<bool()>& cancelled);

}  // namespace strandline
