// The first stage of the search: a branch is divided while the bound of its box says that something in it may matter.
#pragma once

#include <functional>
#include <memory>
#include <vector>

#include "formulate/bound.h"
#include "formulate/box_bound.h"
#include "formulate/branch.h"

namespace strandline {

// What one setting makes of one zone.
struct SettingZone {
  ZoneTable table;
  BoxTable box;
  std::unique_ptr<BoundTable> groups;  // made when a single recipe is first bounded
};

// One setting for the zones of one bowl.
struct Terrain {
  struct Zone {
    double share = 0;  // of the head's weight
    const ZoneLoss* loss = nullptr;
    const SettingZone* made = nullptr;
  };
  const Ground* ground = nullptr;
  double ratio = 1;
  BranchPrices prices;
  std::vector<Zone> zones;
};

struct Descent {
  std::vector<Branch> singles;  // recipes whose box may matter
  std::vector<Branch> left;     // what was not divided further
  long long boxes = 0;          // bounded
};

// Divides the branch, whatever of it has the lowest bound first, until nothing of it lies at or below `limit`, or so
// much has been done that others should have their turn. What lies above the limit is dropped.
Descent descend(const Terrain& terrain, const Branch& from, double limit, const std::function<bool()>& cancelled);

}  // namespace strandline
