#include "predict/steps.h"

#include <algorithm>
#include <cmath>

#include "hair/latin.h"

namespace strandline {
namespace {

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

// A column of the hypercube that belongs to a product, whatever bowl and zone it is in.
std::uint64_t dimension(const std::string& product, std::uint64_t which) {
  constexpr std::uint64_t kOffset = 0xcbf29ce484222325ULL, kPrime = 0x100000001b3ULL;  // FNV-1a
  std::uint64_t hash = kOffset ^ which;
  for (const char c : product) hash = (hash ^ static_cast<unsigned char>(c)) * kPrime;
  return hash;
}

// What shades known by their names alone give, scenario by scenario, against what the names promise: stronger or
// weaker, warmer or cooler, each shade by itself.
class NamesDrawn {
 public:
  NamesDrawn(const BowlChemistry& bowl, size_t count, const Draws& draws) : bowl_(bowl), doubt_(draws.name_doubt) {
    if (doubt_ == 0) return;
    for (const NamedLoad& part : bowl.by_name)
      drawn_.push_back({&part, latin_column(static_cast<int>(count), dimension(part.product, 1)),
                        latin_column(static_cast<int>(count), dimension(part.product, 2))});
  }
  bool any() const { return !drawn_.empty(); }
  // Of the bowl's load, band by band.
  Spectrum factors(size_t scenario) const {
    const Constants c;
    Spectrum change{};
    for (const Drawn& d : drawn_) {
      const double strength = std::exp(doubt_ * c.name_strength_sd * d.strength[scenario]);
      for (int b = 0; b < kBands; ++b) {
        const double blue = (550 - band_nm(b)) / 150;
        const double warmth = std::max(0.0, 1 + doubt_ * c.name_warmth_sd * d.warmth[scenario] * blue);
        change[b] += d.part->load[b] * (strength * warmth - 1);
      }
    }
    for (int b = 0; b < kBands; ++b) change[b] = bowl_.load[b] > 0 ? std::max(0.0, 1 + change[b] / bowl_.load[b]) : 1;
    return change;
  }

 private:
  struct Drawn {
    const NamedLoad* part;
    std::vector<double> strength, warmth;
  };
  const BowlChemistry& bowl_;
  double doubt_;
  std::vector<Drawn> drawn_;
};

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

Constants on_zone(Constants c, const ZoneDraws& zone) {
  if (zone.speed == 1 && zone.speed_doubt == 1) return c;
  c.head_lift = zone.speed * std::pow(c.head_lift, zone.speed_doubt);
  return c;
}

StepTotals apply(const BowlChemistry& bowl, ZoneDraws& zone, const Draws& draws) {
  StepTotals done;
  const auto here = [&](const Constants& c) { return treatment(bowl, zone.from_cm, zone.to_cm, on_zone(c, zone)); };
  const Treatment nominal = here(draws.nominal);
  done.exposure = nominal.exposure;
  std::vector<Spectrum> preferences;
  for (size_t p = 0; p < zone.nominal.fibres.size(); ++p) {
    Fibre& f = zone.nominal.fibres[p];
    preferences.push_back(selectivity(f, draws.nominal));
    done.deposit += zone.nominal.shares[p] * uptake(f, nominal, draws.nominal) * mean(nominal.load);
    f = treated(f, nominal, preferences[p], draws.nominal);
  }
  const NamesDrawn names(bowl, zone.scenarios.size(), draws);
  for (size_t s = 0; s < zone.scenarios.size(); ++s) {
    Treatment t = here(draws.constants[s]);
    for (int b = 0; b < kBands; ++b) t.load[b] *= bed_warmth(b, draws.constants[s]);
    if (names.any()) {
      const Spectrum given = names.factors(s);
      for (int b = 0; b < kBands; ++b) t.load[b] *= given[b];
    }
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
