// What the fit found, in print.
#pragma once

#include <cstdio>

#include "fit.h"
#include "hair.h"

namespace strandline::calibrate {

void print_residuals(const Problem& problem, const Fit& fit, std::FILE* out);  // worst datum first
void print_parameters(const Problem& problem, const Fit& fit,
                      std::FILE* out);  // prior, posterior, how much was learned
void print_correlations(const Problem& problem, const Fit& fit, std::FILE* out);  // pairs of constants beyond 0.4

// How a bowl's result stands to the two rules of the trade.
struct GridCell {
  double natural = 0, shade = 0, percent = 0, result = 0;
  bool volume_school = false;   // lift by developer strength, stopped by the shade; ± 0.25 level
  bool average_school = false;  // the mean of natural and shade; ± 0.7 level
};
// Natural 1–7 × shade natural … natural + 4 (at most 10) × 3, 6, 9, 12 % in the bottle.
std::vector<GridCell> lift_grid(const Hair& hair);
void print_grid(const std::vector<GridCell>& grid, std::FILE* out);

}  // namespace strandline::calibrate
