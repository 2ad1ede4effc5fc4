// What goes on the hair: a bowl is a formula with its zones.
#pragma once

#include <string>
#include <vector>

namespace strandline {

struct Part {
  std::string product;
  double grams = 0;
};

// Parts in the order they are weighed: colour first, then developer(s), then water or additives.
struct Formula {
  std::string range;
  std::vector<Part> parts;
  double minutes = 0;      // from the last touch
  bool damp_hair = false;  // water on the hair dilutes
};

struct Bowl {
  std::string label;  // "A", "B" …
  Formula formula;
  std::vector<std::string> zones;  // "area/span"
  int step = 1;                    // bowls of step 2 go on when those of step 1 are rinsed out, and so on
};

// One thing done to some zones; `predict` takes any order of them.
struct Step {
  Formula formula;
  std::vector<std::string> zones;
};

}  // namespace strandline
