// M19: of all recipes that no reading can tell apart, the plainest. How plain a recipe is for some zones, as one number
// whose leading digits are what a colourist looks at first (knowledge/loss/plainness.json tells them and how far each
// counts).
#pragma once

#include <cstdint>
#include <vector>

#include "mix/groups.h"
#include "search/branch.h"

namespace strandline {

// The smaller the plainer; digits are comparable only between recipes for the same zones.
using Plainness = std::uint64_t;
inline constexpr Plainness kAnyPlainness = ~Plainness{0};

// What practice would mix for some zones together, before any optics.
struct PlainWish {
  struct Wanted {
    const Target* target = nullptr;
    double weight = 1;  // sums to 1
    double level = 0;   // of the shade that practice takes
  };
  std::vector<Wanted> wanted;
  double needed_percent = 0;                 // of the strongest need
  double natural_low = 0, natural_high = 1;  // share of natural shade that the white or the wish asks for
  enum class Beside { nothing, violet, ground };
  Beside beside = Beside::nothing;  // violet: for yellow that is not wished · natural or gold: under copper on white
  double beside_low = 0, beside_high = 1;  // share of it
  bool white = false;                      // enough of it to count
  bool covers = false;                     // and it is to be covered: no clear
  bool lifts = false;                      // some natural hair is to be lighter
  bool coloured = false;                   // most of it is tinted or lightened already
  bool acid = false;                       // most of it is lightened, or was permed: the gentler demi
};
// As plain as that in what counts most, up to the number of tubes, however it fares in the rest.
Plainness as_plain(Plainness p);

PlainWish plain_wish(const std::vector<SearchZone>& zones, const std::vector<int>& served);

// The shades of one range as these zones see them: per node of the tree, ends of what counts.
class PlainGround {
 public:
  PlainGround(const Ground& ground, const PlainWish& wish);
  // No recipe of the branch is plainer; exact for a single recipe.
  Plainness least(const Setting& setting, const Branch& branch) const;

 private:
  struct Ends {
    int level_off = 15;  // halves of a level beyond a half off the wish, of the nearest shade
    int distance = 255;  // steps, of the nearest shade
    bool some_natural = false, all_natural = true;
    bool some_beside = false, all_beside = true;
    bool all_clear = true, some_thin = false;  // clear or a corrector among them
  };
  const Ground& ground_;
  PlainWish wish_;
  std::vector<Ends> nodes_;
};

}  // namespace strandline
