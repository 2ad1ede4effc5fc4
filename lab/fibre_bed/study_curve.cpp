#include <algorithm>
#include <cmath>

#include "study.h"

namespace strandline::fibre_bed {

std::vector<double> curve_depths() {
  std::vector<double> tau{0};
  for (int i = 0; i < 29; ++i) tau.push_back(0.002 * std::pow(1e4, i / 28.0));
  return tau;
}

std::vector<Variant> variants() {
  auto with = [](std::string name, auto change) {
    Variant v{std::move(name), {}};
    change(v.bed);
    return v;
  };
  auto tilt = [](double sd) { return [sd](BedSpec& b) { b.surface.tilt_sd = b.surface.tilt_sd_around = sd; }; };
  return {with("reference", [](BedSpec&) {}),
          with("packing_35", [](BedSpec& b) { b.fraction = 0.35; }),
          with("packing_54", [](BedSpec& b) { b.fraction = 0.54; }),
          with("tilt_02", tilt(0.02)),
          with("tilt_20", tilt(0.2)),
          with("tilt_along", [](BedSpec& b) { b.surface.tilt_sd_around = 0; }),
          with("top_flat", [](BedSpec& b) { b.top = Top::flat; }),
          with("top_loose", [](BedSpec& b) { b.top = Top::loose; })};
}

std::vector<Variant> white_variants() {
  std::vector<Variant> v(4);
  v[0].name = "packets_2", v[0].bed.packet = 2;
  v[1].name = "packets_6", v[1].bed.packet = 6;
  v[2].name = "white_medulla", v[2].bed.scatter = {.coefficient = 5, .core = 0.3, .anisotropy = 0, .share = 1};
  v[3].name = "white_pores", v[3].bed.scatter = {.coefficient = 1, .core = 1, .anisotropy = 0.8, .share = 1};
  return v;
}

namespace {

constexpr int kBlocks = 64;
// Dark fibres need no long paths: two runs, one with few photons followed far, one with many followed
// briefly.
constexpr double kShallow = 80, kDeep = 6000, kSplit = 0.2;  // exp(-0.2 * 80) = 1e-7

Tally curve_run(const BedSpec& bed, double photons, double longest, const Effort& effort, uint64_t stream) {
  const auto tau = curve_depths();
  const Experiment r{.bed = bed,
                     .longest = longest,
                     .blocks = kBlocks,
                     .photons = std::max(1, static_cast<int>(photons * effort.scale / kBlocks)),
                     .seed = mix(effort.seed, stream),
                     .threads = effort.threads};
  return run(r, static_cast<int>(tau.size()), [&](const Photon& p, std::span<double> sums) {
    if (p.end != Photon::End::returned) return;
    const double path = p.path_total();
    for (size_t i = 0; i < tau.size(); ++i) sums[i] += p.weight * std::exp(-tau[i] * path);
  });
}

}  // namespace

std::vector<Value> study_curve(const BedSpec& bed, double photons, const Effort& effort) {
  const auto tau = curve_depths();
  const Tally deep = curve_run(bed, photons, kDeep, effort, 11),
              shallow = curve_run(bed, 6 * photons, kShallow, effort, 12);
  std::vector<Value> r{{1, 0}};
  for (int i = 1; i < static_cast<int>(tau.size()); ++i) {
    const Tally& t = tau[i] < kSplit ? deep : shallow;
    r.push_back({t.mean(i), t.standard_error(i)});
  }
  return r;
}

}  // namespace strandline::fibre_bed
