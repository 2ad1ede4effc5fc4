#include <algorithm>
#include <cmath>

#include "hair/existing.h"
#include "hair/latin.h"
#include "strandline/levels.h"
#include "strandline/scenario.h"

namespace strandline {
namespace {

// Half of the variance of a level reading is the reader's (shared by the whole head), half the strand's.
constexpr double kSharedVariance = 0.5;
// Readings are used within these ends whatever their doubt says.
constexpr double kLevelLow = 0.5, kLevelHigh = 10.5, kPorosityHigh = 3;

// One column of the hypercube after another, in a fixed order.
class Columns {
 public:
  Columns(int count, double doubt) : count_(count), doubt_(doubt) {}
  std::vector<double> next() {
    std::vector<double> column = latin_column(count_, ++dimension_);
    for (double& z : column) z *= doubt_;
    return column;
  }

 private:
  int count_;
  double doubt_;
  std::uint64_t dimension_ = 0;
};

std::vector<Constants> draw_constants(int count, Columns& columns) {
  std::vector<Constants> all(count);
  for (const ConstantInfo& info : constant_infos) {
    if (!info.doubt) continue;
    const std::vector<double> z = columns.next();
    for (int s = 0; s < count; ++s) {
      double& value = all[s].*info.member;
      value = info.log_spread ? value * std::exp(info.sd * z[s]) : std::max(0.05 * value, value + info.sd * z[s]);
    }
  }
  for (Constants& c : all) {
    c.blend_m = std::min(c.blend_m, c.blend_m_highest);
    c.oxidised_rate_ratio = std::min(c.oxidised_rate_ratio, 0.8);
    c.oxidised_yield = std::min(c.oxidised_yield, 1.0);
  }
  return all;
}

// A fibre as a function of the level read: worked out at three levels, linear between (and beyond).
class FibreByLevel {
 public:
  FibreByLevel(const Population& p, double natural_level) {
    const double reach = std::max(0.25, 1.5 * p.level.sd);
    levels_ = {p.level.value - reach, p.level.value, p.level.value + reach};
    for (int i = 0; i < 3; ++i)
      fibres_[i] = fibre_as_read(p, std::clamp(levels_[i], kLevelLow, kLevelHigh), natural_level);
  }
  Fibre at(double level) const {
    const int i = level < levels_[1] ? 0 : 1;
    const double w = (level - levels_[i]) / (levels_[i + 1] - levels_[i]);
    // Amounts of pigment go by factors per level; a linear step would leave them negative beyond the ends.
    auto mix = [w](double x, double y) {
      return x > 1e-9 && y > 1e-9 ? x * std::pow(y / x, w) : std::max(0.0, x + w * (y - x));
    };
    const Fibre &x = fibres_[i], &y = fibres_[i + 1];
    Fibre f;
    f.eumelanin = mix(x.eumelanin, y.eumelanin);
    f.pheomelanin = mix(x.pheomelanin, y.pheomelanin);
    f.oxidised = mix(x.oxidised, y.oxidised);
    for (int b = 0; b < kBands; ++b) f.dye[b] = std::max(0.0, x.dye[b] + w * (y.dye[b] - x.dye[b]));
    return f;
  }

 private:
  std::array<double, 3> levels_{};
  std::array<Fibre, 3> fibres_{};
};

// The level this head grows at: the first natural pigmented population, regrowth before lengths.
Reading natural_level_of(const Head& head) {
  for (const ZoneRef& z : zones(head))
    for (const Population& p : z.span->populations)
      if (p.kind == FibreKind::pigmented && p.origin == ColourOrigin::natural) return p.level;
  return {5, 1};
}

struct ZoneDrawer {
  const Span& span;
  const Head& head;
  int count;
  const std::vector<double>&shared_level, &shared_white;

  ZoneDraws operator()(Columns& columns) const {
    ZoneDraws zone;
    zone.from_cm = span.from_cm;
    zone.to_cm = span.to_cm;
    zone.scenarios.resize(count);
    const std::vector<double> porosity = columns.next();
    double total = 0;
    for (const Population& p : span.populations) total += p.share.value;
    for (const Population& p : span.populations) {
      zone.names.push_back(p.name);
      zone.kinds.push_back(p.kind);
      add(zone, p, total, porosity, columns);
    }
    for (ZoneState& s : zone.scenarios) normalise(s);
    return zone;
  }

  void add(ZoneDraws& zone, const Population& p, double total, const std::vector<double>& porosity,
           Columns& columns) const {
    const Reading natural = p.natural_level.value_or(natural_level_of(head));
    const FibreByLevel by_level(p, natural.value);
    const std::vector<double> level_z = columns.next(), share_z = columns.next();
    auto finish = [&](Fibre f, double porosity_z) {
      f.porosity = std::clamp(span.porosity.value + span.porosity.sd * porosity_z, 0.0, kPorosityHigh);
      f.resistance = p.kind == FibreKind::white ? span.resistance : 0;
      return f;
    };
    zone.nominal.shares.push_back(p.share.value / total);
    zone.nominal.fibres.push_back(finish(by_level.at(p.level.value), 0));
    for (int s = 0; s < count; ++s) {
      const double z = std::sqrt(kSharedVariance) * shared_level[s] + std::sqrt(1 - kSharedVariance) * level_z[s];
      const double w = std::sqrt(kSharedVariance) * shared_white[s] + std::sqrt(1 - kSharedVariance) * share_z[s];
      zone.scenarios[s].shares.push_back(std::clamp(p.share.value + p.share.sd * w, 0.0, 1.0));
      zone.scenarios[s].fibres.push_back(finish(by_level.at(p.level.value + p.level.sd * z), porosity[s]));
    }
  }

  // Populations other than the first carry their own doubt; the first makes the shares add to 1.
  static void normalise(ZoneState& s) {
    double others = 0;
    for (size_t i = 1; i < s.shares.size(); ++i) others += s.shares[i];
    if (others <= 1) {
      s.shares[0] = 1 - others;
    } else {
      for (size_t i = 1; i < s.shares.size(); ++i) s.shares[i] /= others;
      s.shares[0] = 0;
    }
  }
};

}  // namespace

std::vector<ZoneRef> zones(const Head& head) {
  std::vector<ZoneRef> all;
  for (const Area& a : head.areas)
    for (const Span& s : a.spans) all.push_back({&a, &s, a.id + "/" + s.id});
  return all;
}

Draws draw(const Head& head, int count, double doubt) {
  Columns columns(count, doubt);
  Draws draws;
  draws.constants = draw_constants(count, columns);
  const std::vector<double> shared_level = columns.next(), shared_white = columns.next();
  for (const ZoneRef& z : zones(head)) {
    draws.zones.push_back(ZoneDrawer{*z.span, head, count, shared_level, shared_white}(columns));
    draws.zones.back().id = z.id;
  }
  return draws;
}

}  // namespace strandline
