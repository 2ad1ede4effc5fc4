// Steps on the draws of a zone: what each bowl does, in order.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/formula.h"
#include "strandline/scenario.h"
#include "strandline/treatment.h"

namespace strandline {

struct ReadyStep {
  BowlChemistry bowl;
  std::vector<std::string> zones;
  std::vector<double> minutes = {};  // as Step::minutes

  // The bowl as this zone feels it; null where it is not served.
  std::optional<BowlChemistry> on(const std::string& zone) const;
};

// Problems: a step that names an unknown zone, product or range, with its place below /steps.
Result<std::vector<ReadyStep>> prepared(const std::vector<Step>& steps, const Shelf& shelf, const Draws& draws);

struct StepTotals {
  double exposure = 0;  // k_e·H summed over the steps, nominal
  double deposit = 0;   // optical depth of dye added, mean over the bands, share-weighted, nominal
};

// One bowl on the nominal fibres and on those of every scenario; band preferences are those of the nominal fibres.
// A dye looks a little warmer or cooler in another bed: scenarios carry that here and not in the search, whose loads
// are the recipe's own.
// The constants as they are on this zone: as fast as its strand showed.
Constants on_zone(Constants c, const ZoneDraws& zone);

StepTotals apply(const BowlChemistry& bowl, ZoneDraws& zone, const Draws& draws);
// Every step that names this zone, in order.
StepTotals apply(const std::vector<ReadyStep>& steps, ZoneDraws& zone, const Draws& draws);

}  // namespace strandline
