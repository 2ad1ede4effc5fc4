// One simulated maker's line foreseen from some of its swatches.
#pragma once

namespace strandline {

struct LineTrial {
  double median = 0, by_name = 0;  // CIEDE2000 over the line, from the swatches and from names alone
};

// The swatches are those that line::measure_next() asks for.
LineTrial line_trial(int maker, int swatches);

}  // namespace strandline
