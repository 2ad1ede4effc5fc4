#include "experiment.h"

#include <atomic>
#include <cmath>
#include <exception>
#include <mutex>
#include <thread>

namespace strandline::fibre_bed {

double Tally::mean(int output) const {
  double sum = 0;
  for (int b = 0; b < blocks_; ++b) sum += block(b)[output];
  return sum / blocks_;
}

double Tally::standard_error(int output) const {
  const double m = mean(output);
  double sum = 0;
  for (int b = 0; b < blocks_; ++b) sum += std::pow(block(b)[output] - m, 2);
  return std::sqrt(sum / (blocks_ - 1) / blocks_);
}

Tally::Estimate Tally::derived(const std::function<double(std::span<const double>)>& quantity, int groups) const {
  groups = std::min(groups, blocks_);
  auto means_without = [&](int left_out) {
    std::vector<double> sums(outputs_);
    int used = 0;
    for (int b = 0; b < blocks_; ++b) {
      if (b % groups == left_out) continue;
      ++used;
      for (int i = 0; i < outputs_; ++i) sums[i] += block(b)[i];
    }
    for (double& s : sums) s /= used;
    return sums;
  };
  const double whole = quantity(means_without(-1));
  std::vector<double> parts;
  double mean = 0;
  for (int g = 0; g < groups; ++g) mean += parts.emplace_back(quantity(means_without(g))) / groups;
  double sum = 0;
  for (double p : parts) sum += (p - mean) * (p - mean);
  return {whole, std::sqrt(sum * (groups - 1) / groups)};
}

Tally run(const Experiment& experiment, int outputs,
          const std::function<void(const Photon&, std::span<double>)>& count) {
  Tally tally(experiment.blocks, outputs);
  std::atomic<int> next{0};
  std::exception_ptr failure;
  std::mutex failing;
  auto work = [&] {
    try {
      for (int b = next++; b < experiment.blocks; b = next++) {
        const uint64_t seed = mix(experiment.seed, static_cast<uint64_t>(b));
        const Packing packing = pack(experiment.bed, seed);
        const auto sums = tally.block(b);
        for (int i = 0; i < experiment.photons; ++i)
          count(follow(experiment.bed, packing, experiment.launch, experiment.longest, seed, static_cast<uint64_t>(i)),
                sums);
        for (double& s : sums) s /= experiment.photons;
      }
    } catch (...) {
      const std::lock_guard lock(failing);
      failure = std::current_exception();
    }
  };
  {
    std::vector<std::jthread> threads;
    for (int t = 1; t < experiment.threads; ++t) threads.emplace_back(work);
    work();
  }
  if (failure) std::rethrow_exception(failure);
  return tally;
}

}  // namespace strandline::fibre_bed
