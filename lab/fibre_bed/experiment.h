#pragma once
// Many photons, in blocks: each block has its own packing, so the spread between blocks holds the chance of
// the packing too.
#include <functional>
#include <span>
#include <vector>

#include "transport.h"

namespace strandline::fibre_bed {

struct Experiment {
  BedSpec bed{};
  Launch launch{8 * kDegree, 8 * kDegree, {}};
  double longest = 1e5;  // diameters inside fibres
  int blocks = 64;       // >= 2
  int photons = 1000;    // per block
  uint64_t seed = 1;
  int threads = 1;
};

// Means per launched photon, by block.
class Tally {
 public:
  Tally(int blocks, int outputs) : blocks_(blocks), outputs_(outputs), values_(blocks * outputs) {}
  int blocks() const { return blocks_; }
  int outputs() const { return outputs_; }
  std::span<double> block(int b) { return {values_.data() + b * outputs_, static_cast<size_t>(outputs_)}; }
  std::span<const double> block(int b) const { return {values_.data() + b * outputs_, static_cast<size_t>(outputs_)}; }
  double mean(int output) const;
  double standard_error(int output) const;

  struct Estimate {
    double value, standard_error;
  };
  // A quantity computed from the means, with its error by leaving out one of `groups` groups of blocks at a
  // time (jackknife).
  Estimate derived(const std::function<double(std::span<const double>)>& quantity, int groups = 16) const;

 private:
  int blocks_, outputs_;
  std::vector<double> values_;
};

// Calls count(photon, sums) for every photon, lost ones too; `sums` has `outputs` numbers. The result does
// not depend on `threads`. Throws what packing throws.
Tally run(const Experiment& experiment, int outputs,
          const std::function<void(const Photon&, std::span<double>)>& count);

}  // namespace strandline::fibre_bed
