// What must hold, checked against the built engine: one row per number, none hidden.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "strandline/shelf.h"

namespace strandline {

// What a row's range was taken from. Only the first kind says anything about the world that was not put in.
enum class EvidenceKind {
  outside_unused,   // measured or reported by others, used in no fit and in no choice of a constant
  outside_fitted,   // measured or reported by others, and the constants were fitted to it or derived from it
  common_practice,  // what colourists agree on; no source
  own_simulation,   // a truth of our own code
  law_or_identity,  // law, arithmetic, mathematics, published check values of a formula
};
inline constexpr int kEvidenceKinds = 5;
std::string_view code(EvidenceKind kind);  // "outside_unused" …

struct EvidenceRow {
  std::string id;  // "ciede2000.01", "volume_rule.natural4.6percent" …
  EvidenceKind kind = EvidenceKind::outside_unused;
  bool second_hand = false;  // read where another work quotes it; the work itself was not opened
  double low = 0, high = 0;  // what is allowed
  double got = 0;
  std::string source;
  bool pass = false;  // low ≤ got ≤ high, but for rounding
};

// `shelf` gives the neutral shades that the rules of the trade speak of (the demo shelf).
std::vector<EvidenceRow> evidence(const Shelf& shelf);

// Whole simulated salons and shelves: half a minute and more.
std::vector<EvidenceRow> campaigns();

}  // namespace strandline
