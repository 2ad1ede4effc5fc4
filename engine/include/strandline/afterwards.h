// What follows the visit: when a line shows, how long the colour lasts, when to come again, and what will not happen.
// Weeks are common practice (knowledge/loss/after.json), by what was done to which hair; nobody's own hair was
// followed.
#pragma once

#include <string>

#include "strandline/result.h"

namespace strandline {

struct Weeks {
  double from = 0, until = 0;  // both 0: not so
};

struct Afterwards {
  Weeks line;                             // until new growth draws a line
  Weeks lasts;                            // until colour that fades is due again
  Weeks rebook;                           // when to come again
  int visits_from = 0, visits_until = 0;  // still to come before the wish is there, this one among them; 0: no bowl
  std::string next_test;  // civil date from which a skin test is too old; empty where the house asks none
  Problems told;          // code + parameters, most important first
};

}  // namespace strandline
