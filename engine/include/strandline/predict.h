// predict: head + steps → colour per zone and fibre kind, its spread, lift, deposit, condition.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "strandline/aim.h"
#include "strandline/assess.h"
#include "strandline/formula.h"
#include "strandline/scenario.h"
#include "strandline/shelf.h"

namespace strandline {

// How likely the result lands: within half a level of the aim and in the tone asked for.
struct Landing {
  double likelihood = 0;        // both, over 1024 scenarios
  double level_likelihood = 0;  // within ± 0.5 level
  double tone_likelihood = 0;   // within the tone tolerance
  double cover_likelihood = 1;  // white beside pigmented ≤ 1 level
  bool show_number = false;     // only on an invented shelf, as nothing records results yet; else "strand first"
  bool simulated = false;       // the shelf and its results are invented, and said so; always, where a number is shown
  double delta_e_2000 = 0;      // of the nominal prediction to the target
  double level_error = 0;       // nominal, positive = lighter than asked
  double tone_error = 0;        // nominal distance in the a*b* plane
  double expected_loss = 0;     // M14, in levels
};

// How much of the variance of a zone's predicted lightness one source brings. Shares of a zone add to 1.
struct DoubtShare {
  DoubtSource source = DoubtSource::level_reading;
  double share = 0;
};

struct ZoneResult {
  std::string zone;
  ZoneColour today, planned;
  double lift_levels = 0;          // of the pigmented fibres' own pigment
  double deposit = 0;              // optical depth of dye added, mean over the bands, share-weighted
  double exposure = 0;             // k_e·H summed over the steps
  std::optional<Landing> landing;  // where there is a target
  std::vector<DoubtShare> doubt;   // largest first; empty unless asked for
};

struct Prediction {
  std::vector<ZoneResult> zones;
  Problems notes;
};

// What a zone's doubt comes from, in words to be: {doubt_from_…, percent}. The largest share always, the second where
// it is a third or more; none for no shares.
Problems doubt_reasons(const std::vector<DoubtShare>& doubt);

// Runs body(begin, end) over [0, count) in pieces, on as many threads as its owner likes; serial by default.
using ParallelFor = std::function<void(int count, const std::function<void(int begin, int end)>& body)>;
void serial_for(int count, const std::function<void(int, int)>& body);

// How many scenarios a search uses, and how many a reported likelihood.
inline constexpr int kSearchScenarios = 64;
inline constexpr int kReportScenarios = 1024;

struct PredictOptions {
  int scenarios = kReportScenarios;
  double covered_contrast_levels = 1;  // white beside pigmented that still counts as covered (policy)
  bool attribute_doubt = false;        // say which readings and constants the spread comes from
  ParallelFor parallel = serial_for;
};

// Requires check(head) and check(shelf) to be empty. Steps are applied in order; a step that names an unknown zone,
// product or range is a problem. `targets` may be empty.
Result<Prediction> predict(const Head& head, const std::vector<Step>& steps, const Shelf& shelf,
                           const std::vector<Target>& targets = {}, const PredictOptions& options = {});

struct ZoneDoubt {
  std::string zone;
  std::vector<DoubtShare> shares;  // largest first, together 1; empty where nothing is in doubt
};

// The variance of each zone's L* after the steps with one source drawn and the others nominal, over the sum of these
// variances (M13); document order. Requires and problems as predict.
Result<std::vector<ZoneDoubt>> doubt_of(const Head& head, const std::vector<Step>& steps, const Shelf& shelf,
                                        const ParallelFor& parallel = serial_for);

// aim: wishes → one target per zone. Unknown zone or shade, level or L*a*b* out of range: problems.
Result<std::vector<Target>> aim(const Head& head, const std::vector<ZoneAim>& wishes, const Shelf& shelf);

Problems check(const Shelf& shelf);

}  // namespace strandline
