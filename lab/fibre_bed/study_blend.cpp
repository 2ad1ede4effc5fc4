#include <algorithm>
#include <cmath>

#include "lightness.h"
#include "study.h"

namespace strandline::fibre_bed {

namespace {

constexpr double kWhite[] = {0.01, 0.02, 0.04};
constexpr double kPigmented[] = {0.06, 0.12, 0.3, 0.8, 2, 5};
constexpr int kShares[] = {0, 1, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20};  // twentieths of white
constexpr int kPairs = std::size(kWhite) * std::size(kPigmented), kShareCount = std::size(kShares);
static_assert(kBins == 20);

// Output pair * kShareCount + share is R of that blend.
void count_photon(const Photon& p, std::span<double> sums) {
  if (p.end != Photon::End::returned) return;
  const double total = p.path_total();
  double white[kShareCount];
  for (int s = 0; s < kShareCount; ++s) white[s] = p.path_below(kShares[s]);
  int out = 0;
  for (double tau_white : kWhite)
    for (double tau_pigmented : kPigmented)
      for (int s = 0; s < kShareCount; ++s)
        sums[out++] += p.weight * std::exp(-tau_pigmented * total + (tau_pigmented - tau_white) * white[s]);
}

// White fibres that scatter change the light's way, so every share needs photons of its own.
Tally blend_run(const BedSpec& bed, double photons, const Effort& effort) {
  constexpr int blocks = 64, outputs = kPairs * kShareCount;
  Experiment r{.bed = bed,
               .longest = 1500,
               .blocks = blocks,
               .photons = std::max(1, static_cast<int>(photons * effort.scale / blocks)),
               .seed = mix(effort.seed, 21),
               .threads = effort.threads};
  if (bed.scatter.coefficient == 0) return run(r, outputs, count_photon);
  Tally all(blocks, outputs);
  r.photons = r.photons / 4 + 1;
  for (int s = 0; s < kShareCount; ++s) {
    r.bed.scatter.share = kShares[s] / double(kBins);
    const Tally one = run(r, outputs, count_photon);
    for (int b = 0; b < blocks; ++b)
      for (int i = s; i < outputs; i += kShareCount) all.block(b)[i] = one.block(b)[i];
  }
  return all;
}

std::vector<Blend> blends_of(std::span<const double> means, int pair) {
  const auto r = means.subspan(pair * kShareCount, kShareCount);
  std::vector<Blend> b;
  for (int s = 0; s < kShareCount; ++s) b.push_back({kShares[s] / double(kBins), r.back(), r.front(), r[s]});
  return b;
}

}  // namespace

BlendStudy study_blend(const BedSpec& bed, double photons, const Effort& effort) {
  const Tally t = blend_run(bed, photons, effort);
  std::vector<double> means;
  for (int i = 0; i < t.outputs(); ++i) means.push_back(t.mean(i));
  BlendStudy study;
  std::vector<Blend> all;
  for (int pair = 0; pair < kPairs; ++pair) {
    BlendPair p{kWhite[pair / std::size(kPigmented)],
                kPigmented[pair % std::size(kPigmented)],
                blends_of(means, pair),
                {},
                {},
                0};
    for (int s = 0; s < kShareCount; ++s) p.errors.push_back(t.standard_error(pair * kShareCount + s));
    const auto m = t.derived([&](std::span<const double> v) { return best_m(blends_of(v, pair)); });
    p.m = {m.value, m.standard_error};
    p.misfit =
        misfit(p.blends, [&](const Blend& b) { return blend_stearns_noechel(b.share, b.white, b.pigmented, m.value); });
    all.insert(all.end(), p.blends.begin(), p.blends.end());
    study.pairs.push_back(std::move(p));
  }
  const auto m = t.derived([](std::span<const double> v) {
    std::vector<Blend> every;
    for (int pair = 0; pair < kPairs; ++pair) {
      const auto some = blends_of(v, pair);
      every.insert(every.end(), some.begin(), some.end());
    }
    return best_m(every);
  });
  study.m = {m.value, m.standard_error};
  study.misfit =
      misfit(all, [&](const Blend& b) { return blend_stearns_noechel(b.share, b.white, b.pigmented, m.value); });
  return study;
}

}  // namespace strandline::fibre_bed
