#include "predict/steps.h"

#include <algorithm>

namespace strandline {
namespace {

double mean(const Spectrum& s) {
  double sum = 0;
  for (double v : s) sum += v;
  return sum / kBands;
}

Problems check_zones(const std::vector<Step>& steps, const Draws& draws) {
  Problems problems;
  for (size_t i = 0; i < steps.size(); ++i)
    for (size_t j = 0; j < steps[i].zones.size(); ++j)
      if (std::none_of(draws.zones.begin(), draws.zones.end(),
                       [&](const ZoneDraws& z) { return z.id == steps[i].zones[j]; }))
        problems.push_back({"unknown_zone",
                            "/steps/" + std::to_string(i) + "/zones/" + std::to_string(j),
                            {{"zone", steps[i].zones[j]}}});
  return problems;
}

}  // namespace

std::optional<BowlChemistry> ReadyStep::on(const std::string& zone) const {
  const auto own = std::find(zones.begin(), zones.end(), zone);
  if (own == zones.end()) return std::nullopt;
  BowlChemistry here = bowl;
  if (!minutes.empty()) here.minutes = minutes[static_cast<size_t>(own - zones.begin())];
  return here;
}

Result<std::vector<ReadyStep>> prepared(const std::vector<Step>& steps, const Shelf& shelf, const Draws& draws) {
  Problems problems = check_zones(steps, draws);
  std::vector<ReadyStep> ready;
  for (size_t i = 0; i < steps.size(); ++i) {
    auto bowl = chemistry(steps[i].formula, shelf);
    if (bowl)
      ready.push_back({*bowl, steps[i].zones, steps[i].minutes});
    else
      for (Problem& p : bowl.error()) {
        p.path = "/steps/" + std::to_string(i) + p.path;
        problems.push_back(std::move(p));
      }
  }
  if (!problems.empty()) return tl::unexpected(problems);
  return ready;
}

StepTotals apply(const BowlChemistry& bowl, ZoneDraws& zone, const Draws& draws) {
  StepTotals done;
  const Treatment nominal = treatment(bowl, zone.from_cm, zone.to_cm, draws.nominal);
  done.exposure = nominal.exposure;
  std::vector<Spectrum> preferences;
  for (size_t p = 0; p < zone.nominal.fibres.size(); ++p) {
    Fibre& f = zone.nominal.fibres[p];
    preferences.push_back(selectivity(f, draws.nominal));
    done.deposit += zone.nominal.shares[p] * uptake(f, nominal, draws.nominal) * mean(nominal.load);
    f = treated(f, nominal, preferences[p], draws.nominal);
  }
  for (size_t s = 0; s < zone.scenarios.size(); ++s) {
    Treatment t = treatment(bowl, zone.from_cm, zone.to_cm, draws.constants[s]);
    for (int b = 0; b < kBands; ++b) t.load[b] *= bed_warmth(b, draws.constants[s]);
    std::vector<Fibre>& fibres = zone.scenarios[s].fibres;
    for (size_t p = 0; p < fibres.size(); ++p) fibres[p] = treated(fibres[p], t, preferences[p], draws.constants[s]);
  }
  return done;
}

StepTotals apply(const std::vector<ReadyStep>& steps, ZoneDraws& zone, const Draws& draws) {
  StepTotals total;
  for (const ReadyStep& step : steps) {
    const auto here = step.on(zone.id);
    if (!here) continue;
    const StepTotals done = apply(*here, zone, draws);
    total.exposure += done.exposure, total.deposit += done.deposit;
  }
  return total;
}

}  // namespace strandline
