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
  // Minutes on each of `zones`, from when half of it was touched; empty: formula.minutes on all of them.
  std::vector<double> minutes = {};
};

// How long a bowl is on one of its zones.
struct OnZone {
  double minutes = 0;  // from its last touch: what people are told, and what a range's window speaks of
  double middle = 0;   // from when half of it was touched: what is predicted
};

}  // namespace strandline
