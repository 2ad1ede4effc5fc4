#include <cmath>
#include <cstdio>

#include "knowledge_file.h"
#include "lightness.h"
#include "produce.h"

namespace strandline::fibre_bed {

namespace {

const char* kSource =
    "computed: light transport in a bed of two kinds of fibre mixed at random, packing 0.5, tilt sd 0.08 rad";

void write_reference(const Output& out, const BlendStudy& study) {
  TableFile file{"blend_curves",
                 "Reflectance of white among pigmented fibres",
                 "optical depth; share of white; reflectance",
                 kSource,
                 out.command,
                 {"tau_white", "tau_pigmented", "share_white", "reflectance", "standard_error"},
                 {}};
  for (const BlendPair& p : study.pairs)
    for (size_t i = 0; i < p.blends.size(); ++i)
      file.rows.push_back({p.tau_white, p.tau_pigmented, p.blends[i].share, p.blends[i].mixed, p.errors[i]});
  write_file(out.folder + "/blend_curves.json", to_json(file));
}

void write_constants(const Output& out, const std::vector<Variant>& beds, const std::vector<BlendStudy>& studies) {
  TableFile file{"blend_constants",
                 "Stearns-Noechel M that suits each blend best, misfit as rms of L*, and M in other beds",
                 "optical depth; M; L*",
                 kSource,
                 out.command,
                 {"tau_white", "tau_pigmented", "m", "standard_error", "misfit"},
                 {}};
  for (size_t v = 1; v < beds.size(); ++v) file.columns.push_back(beds[v].name);
  for (size_t i = 0; i < studies[0].pairs.size(); ++i) {
    const BlendPair& p = studies[0].pairs[i];
    std::vector<double> row{p.tau_white, p.tau_pigmented, p.m.value, p.m.error, p.misfit};
    for (size_t v = 1; v < beds.size(); ++v) row.push_back(studies[v].pairs[i].m.value);
    file.rows.push_back(row);
  }
  write_file(out.folder + "/blend_constants.json", to_json(file));
}

// Other laws of two constants, for comparison: the mean of (R + c)^p.
void print_power_laws(const BlendStudy& study) {
  std::vector<Blend> all;
  for (const BlendPair& p : study.pairs) all.insert(all.end(), p.blends.begin(), p.blends.end());
  std::printf("mean of (R + c)^p, best c and rms of L*:");
  for (double p : {1.0, -0.5, -0.75, -1.0, -1.25, -1.5, -2.0}) {
    auto law = [&](double c) {
      return misfit(all, [&](const Blend& b) { return blend_power(b.share, b.white, b.pigmented, p, c); });
    };
    const double c = least(1e-4, 0.5, law);
    std::printf("  p %.2f: c %.3f, %.2f", p, c, law(c));
  }
  std::printf("\n");
}

}  // namespace

void produce_blend(const Output& out) {
  auto beds = variants();
  const size_t random = beds.size();  // the beds before this one are mixed at random without scattering
  for (Variant& v : white_variants()) beds.push_back(std::move(v));
  std::vector<BlendStudy> studies;
  for (size_t v = 0; v < beds.size(); ++v) studies.push_back(study_blend(beds[v].bed, v == 0 ? 3e5 : 8e4, out.effort));
  write_reference(out, studies[0]);
  write_constants(out, beds, studies);
  double mean = 0, square = 0;
  for (size_t v = 0; v < random; ++v)
    mean += studies[v].m.value / double(random), square += std::pow(studies[v].m.value, 2) / double(random);
  const double sd = std::sqrt((square - mean * mean) * double(random) / double(random - 1));
  write_file(out.folder + "/blend_law.json",
             to_json(ConstantsFile{"Stearns-Noechel M over packings, tilts and tops of a bed mixed at random",
                                   out.command,
                                   {{"bed_blend_m", mean, sd, "1",
                                     "computed: mean and sd over eight beds of the best single M for white "
                                     "0.01-0.04 among pigmented 0.06-5"}}}));
  for (size_t v = 0; v < beds.size(); ++v)
    std::printf("%-14s M %.3f +- %.3f, rms of L* %.2f\n", beds[v].name.c_str(), studies[v].m.value, studies[v].m.error,
                studies[v].misfit);
  std::printf("M over the first %zu: %.3f, sd %.3f\n", random, mean, sd);
  for (const BlendPair& p : studies[0].pairs)
    std::printf("white %.2f among %.2f: M %.3f +- %.3f, rms of L* %.2f\n", p.tau_white, p.tau_pigmented, p.m.value,
                p.m.error, p.misfit);
  print_power_laws(studies[0]);
}

}  // namespace strandline::fibre_bed
