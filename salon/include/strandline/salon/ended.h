// What handed-in visits tell of grams, minutes, levels and money: read once from their facts, then only what is new.
#pragma once

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "strandline/salon/world.h"
#include "strandline/wire/json.h"

namespace strandline::salon {

struct EndedZone {
  std::string zone;
  double off_levels = 0;  // reached − foreseen
  bool same_tone = false;
};

struct EndedVisit {
  std::string id, at, by, person, shelf;  // at "" = not handed in yet
  std::optional<double> planned_min, real_min;
  // Of the bowls whose leftovers were weighed: asked for, mixed, left. 0 = of none.
  double planned_g = 0, mixed_g = 0, left_g = 0;
  double mix_factor = 1;  // that its grams were planned with
  std::vector<EndedZone> zones;
  std::map<std::string, std::string> ranges;  // of each zone, by what lay there
  std::string redo_of, redo_cause;
  std::optional<double> price_from, price_to;
};

// Safe from many threads at once. The world must outlive it.
class Ended {
 public:
  explicit Ended(World& world) : world_(world) {}
  // A copy of all that are handed in, oldest first. Problems of the store.
  Result<std::vector<EndedVisit>> visits();

 private:
  Result<void> catch_up(const std::string& kind);
  void take(const store::Fact& fact);

  World& world_;
  std::mutex mutex_;
  std::map<std::string, std::int64_t> after_;  // by kind
  std::map<std::string, EndedVisit> visits_;
};

}  // namespace strandline::salon
