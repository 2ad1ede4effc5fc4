// What must hold, checked against the built engine: one row per number, none hidden.
#pragma once

#include <string>
#include <vector>

#include "strandline/shelf.h"

namespace strandline {

struct EvidenceRow {
  std::string id;       // "ciede2000.01", "volume_rule.natural4.6percent" …
  double expected = 0;  // middle of the accepted range
  double got = 0;
  double tolerance = 0;  // pass = |got − expected| ≤ tolerance
  std::string source;    // published source, "common practice", "by definition"
  bool pass = false;
};

// `shelf` gives the neutral shades that the rules of the trade speak of (the demo shelf).
std::vector<EvidenceRow> evidence(const Shelf& shelf);

}  // namespace strandline
