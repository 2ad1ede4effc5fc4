// Words for quantities. Plain doubles carry their unit in the name (grams, minutes, cm, percent); this file holds the
// few that need a type.
#pragma once

namespace strandline {

// A number somebody read, with its doubt. `sd` is one standard deviation in the unit of the value; 0 = taken as exact.
struct Reading {
  double value = 0;
  double sd = 0;

  bool operator==(const Reading&) const = default;
};

// The spread of a predicted number over the scenarios: the 10th, 50th and 90th percentile.
struct Spread {
  double p10 = 0, p50 = 0, p90 = 0;

  bool operator==(const Spread&) const = default;
};

}  // namespace strandline
