// Zones that may share a bowl: one span kind, few enough groups that every subset can be searched.
#pragma once

#include <string>
#include <vector>

#include "predict/kernel.h"
#include "strandline/formulate.h"
#include "strandline/loss.h"

namespace strandline {

// One zone as the search sees it.
struct SearchZone {
  const Area* area = nullptr;
  const Span* span = nullptr;
  const ZoneDraws* draws = nullptr;
  const Target* target = nullptr;
  ZoneLoss price;
  double weight = 1;
  double white = 0;           // share of white fibres
  double asked = 0;           // levels the wish is lighter than the pigmented fibres; 0 where all are white
  double needed_percent = 0;  // bottle strength that practice takes here
  double leave_loss = 0;      // expected loss when nothing is done
  double half_touch = 0;      // minutes between the middle of its application and its last touch
};

// Zones that always go together, and the span kind they are of (a bowl serves one span kind).
struct ZoneGroup {
  std::vector<int> zones;  // indices into the list of SearchZone
  bool at_scalp = true;
};

inline constexpr int kGroupsMost = 6;

// White or its resistance differ so much that the client would see one bowl on both (common practice).
bool apart_by_white(const SearchZone& a, const SearchZone& b);

// Every zone its own group, nearest alike zones merged until at most kGroupsMost are left per span kind.
std::vector<ZoneGroup> group_zones(const std::vector<SearchZone>& zones);

}  // namespace strandline
