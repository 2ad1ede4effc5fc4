// What a search needs to know of one setting for the zones of one bowl, and where that is kept.
#pragma once

#include <limits>
#include <memory>
#include <vector>

#include "mix/groups.h"
#include "search/bound.h"
#include "search/box_bound.h"
#include "search/plainness.h"

namespace strandline {

// Which recipes may be used; all of them by default.
struct Allowed {
  double strength_below = std::numeric_limits<double>::infinity();  // % in the bottle
  int tubes_most = 3;
  double price_most = std::numeric_limits<double>::infinity();  // of the colour part, per g
  double minutes_below = std::numeric_limits<double>::infinity();
  int set = -1;            // of the domain, one range; -1: any
  bool fades_out = false;  // no permanent colour: its regrowth line softens as it washes out
  bool operator==(const Allowed&) const = default;
};

// What one setting makes of one zone in so many minutes.
struct SettingZone {
  double minutes = 0;  // from the last touch
  ZoneTable table;
  const ZoneLoss* loss = nullptr;
  float load_most = 0;
  std::unique_ptr<BoxTable> box;       // made when a branch is first divided
  std::unique_ptr<BoundTable> groups;  // made when a single recipe is first bounded
};

// One setting for the zones of one bowl.
struct Terrain {
  struct Zone {
    double share = 0;  // of the head's weight
    const ZoneLoss* loss = nullptr;
    struct Time {
      SettingZone* made = nullptr;
      double price = 0;  // of the setting for so long; its share of it
    };
    std::vector<Time> times;  // never empty; the search takes whichever costs least for a recipe
    int first_bit = 0;        // of Branch::dead; times from bit 64 on are never ruled out
    double least_time = 0;    // price of the cheapest
    double floor = 0;         // its part of the objective is no less, whatever is mixed
    double least() const { return part(least_time); }
    double part(double time_and_loss) const { return std::max(floor, time_and_loss); }
    bool alive(const Branch& b, size_t time) const {
      const size_t bit = static_cast<size_t>(first_bit) + time;
      return bit >= 64 || !(b.dead >> bit & 1);
    }
  };
  const Ground* ground = nullptr;
  double ratio = 1;
  const Setting* setting = nullptr;
  const PlainGround* plain = nullptr;  // null where the plainest is not asked for
  double price_most = std::numeric_limits<double>::infinity();
  std::vector<Zone> zones;  // the heaviest first
  // What is poured of each way of sharing; all 0 where nothing is.
  struct Poured {
    double part_g[3] = {0, 0, 0};
    double developer_price = 0;  // levels; infinite where there is not enough of it
  };
  Poured poured[kWays];
};

// No recipe of the branch costs less before any optics; infinite where there is not enough of anything it could be of.
double least_price(const Terrain& terrain, const Branch& branch);

// Settings × zones, each worked out when it is first needed.
class SettingZones {
 public:
  // The references must outlive it.
  SettingZones(const Domain& domain, const std::vector<SearchZone>& zones, const Draws& draws, double total_weight,
               const FormulaPolicy& policy);

  const ZoneTable& table(int setting, int zone, double minutes) { return made(setting, zone, minutes).table; }
  const Ground& ground(int setting) const;
  // Law, house and practice; not what is mixed.
  bool may_serve(int setting, const std::vector<int>& zones) const;
  // `minutes`: the times to choose from, for each of `zones`, none of them empty. Floors are 0; `grams` of mix, 0:
  // nothing is poured.
  Terrain terrain(int setting, const std::vector<int>& zones, const std::vector<std::vector<double>>& minutes,
                  double grams);

 private:
  SettingZone& made(int setting, int zone, double minutes);

  const Domain& domain_;
  const std::vector<SearchZone>& zones_;
  const Draws& draws_;
  void weigh(Terrain& terrain, const Setting& setting, double grams) const;

  double total_weight_;
  const FormulaPolicy& policy_;
  std::vector<Ground> grounds_;                                  // per RecipeSet
  std::vector<float> load_most_;                                 // per setting
  std::vector<std::vector<std::unique_ptr<SettingZone>>> made_;  // [setting][zone]: times as they were asked for
};

// Makes what is missing of these.
void need_boxes(const std::vector<SettingZone*>& all, const ParallelFor& parallel);
void need_groups(const std::vector<SettingZone*>& all, const ParallelFor& parallel);

}  // namespace strandline
