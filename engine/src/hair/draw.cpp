#include <algorithm>
#include <cmath>
#include <utility>

#include "hair/latin.h"
#include "strandline/existing.h"
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
  Columns(int count, double doubt, std::optional<DoubtSource> only) : count_(count), doubt_(doubt), only_(only) {}
  std::vector<double> next() {
    std::vector<double> column = latin_column(count_, ++dimension_);
    for (double& z : column) z *= doubt_;
    return column;
  }
  std::vector<double> next(DoubtSource source) {
    std::vector<double> column = next();
    if (!uses(source)) std::fill(column.begin(), column.end(), 0.0);
    return column;
  }
  bool uses(DoubtSource source) const { return !only_ || *only_ == source; }

 private:
  int count_;
  double doubt_;
  std::optional<DoubtSource> only_;
  std::uint64_t dimension_ = 0;
};

using Member = double Constants::*;

// By the folder that a constant's file lies in.
DoubtSource source_of(const ConstantInfo& info) {
  const std::string_view file = info.file;
  auto in = [&](std::string_view part) { return file.find(part) != std::string_view::npos; };
  if (in("/pigments/")) return DoubtSource::white_look;
  if (in("/doubt/blend")) return DoubtSource::blend;
  if (in("/uptake/") || info.member == &Constants::shade_strength) return DoubtSource::uptake;
  return DoubtSource::lightening;
}

// Standard normal columns of the constants that vary, those of the joint fit mixed by its correlation.
std::vector<std::pair<const ConstantInfo*, std::vector<double>>> constant_columns(int count, Columns& columns) {
  std::vector<std::pair<const ConstantInfo*, std::vector<double>>> all;
  for (const ConstantInfo& info : constant_infos)
    if (info.doubt) all.emplace_back(&info, columns.next());
  auto column = [&](Member member) -> std::vector<double>& {
    return std::find_if(all.begin(), all.end(), [&](const auto& c) { return c.first->member == member; })->second;
  };
  // Last row first: each takes only from rows above it, which still hold their own numbers.
  for (size_t i = correlated_constants.size(); i-- > 0;) {
    std::vector<double>& z = column(correlated_constants[i]);
    for (int s = 0; s < count; ++s) {
      z[s] *= correlation_factor[i][i];
      for (size_t k = 0; k < i; ++k) z[s] += correlation_factor[i][k] * column(correlated_constants[k])[s];
    }
  }
  for (auto& [info, z] : all)
    if (!columns.uses(source_of(*info))) std::fill(z.begin(), z.end(), 0.0);
  return all;
}

std::vector<Constants> draw_constants(int count, Columns& columns) {
  constexpr double kLeast = 0.05;
  std::vector<Constants> all(count);
  for (const auto& [info, z] : constant_columns(count, columns))
    for (int s = 0; s < count; ++s) {
      double& value = all[s].*info->member;
      value = info->log_spread ? value * std::exp(info->sd * z[s]) : value + info->sd * z[s];
      // What is a size stays above nothing; what is a change about 0 goes both ways.
      if (info->value > 0) value = std::max(value, kLeast * info->value);
    }
  for (Constants& c : all) {
    // Nothing mixed and measured lies under 0.097; the bounds' chords are drawn for no less than a third of the usual.
    c.blend_m = std::clamp(c.blend_m, Constants{}.blend_m / 3, c.blend_m_highest);
    c.oxidised_rate_ratio = std::min(c.oxidised_rate_ratio, 0.8);
    c.oxidised_yield = std::min(c.oxidised_yield, 1.0);
  }
  return all;
}

// Three points and what lies between and beyond them.
struct Nodes {
  std::array<double, 3> at{};
  std::array<Fibre, 3> fibres{};
  Fibre between(double x) const {
    const int i = x < at[1] ? 0 : 1;
    const double w = (x - at[i]) / (at[i + 1] - at[i]);
    // Amounts of pigment go by factors per level and exposure; a linear step would leave them negative beyond the ends.
    auto mix = [w](double p, double q) {
      return p > 1e-9 && q > 1e-9 ? p * std::pow(q / p, w) : std::max(0.0, p + w * (q - p));
    };
    const Fibre &p = fibres[i], &q = fibres[i + 1];
    Fibre f;
    f.eumelanin = mix(p.eumelanin, q.eumelanin);
    f.pheomelanin = mix(p.pheomelanin, q.pheomelanin);
    f.oxidised = mix(p.oxidised, q.oxidised);
    f.yellow_lost = std::clamp(p.yellow_lost + w * (q.yellow_lost - p.yellow_lost), 0.0, 1.0);
    for (int b = 0; b < kBands; ++b) f.dye[b] = std::max(0.0, p.dye[b] + w * (q.dye[b] - p.dye[b]));
    return f;
  }
};

// A fibre as a function of the level read, and of how much a tint lifted what lies under it.
class FibreAsRead {
 public:
  FibreAsRead(const Population& p, double natural_level) : tinted_(hides_lift(p)) {
    const double reach = std::max(0.25, 1.5 * p.level.sd);
    for (size_t k = 0; k < (tinted_ ? kLifts.size() : 1); ++k) {
      Nodes& nodes = by_level_[k];
      nodes.at = {p.level.value - reach, p.level.value, p.level.value + reach};
      for (size_t i = 0; i < nodes.at.size(); ++i)
        nodes.fibres[i] =
            fibre_as_read(p, std::clamp(nodes.at[i], kLevelLow, kLevelHigh), natural_level, tinted_ ? kLifts[k] : 1);
    }
  }
  // Does a colour hide how much the pigment under it was lifted?
  static bool hides_lift(const Population& p) {
    return p.origin != ColourOrigin::natural && p.origin != ColourOrigin::lightened;
  }
  Fibre at(double level, double lift_under) const {
    if (!tinted_) return by_level_[0].between(level);
    Nodes by_lift{kLifts, {}};
    for (size_t k = 0; k < kLifts.size(); ++k) by_lift.fibres[k] = by_level_[k].between(level);
    return by_lift.between(std::clamp(lift_under, 0.0, 2.5));
  }

 private:
  // Times the usual lift, by choice: where fibres are worked out; what is drawn lies between and a little beyond.
  static constexpr std::array<double, 3> kLifts = {0.4, 1, 1.8};
  bool tinted_;
  std::array<Nodes, 3> by_level_{};
};

// Coloured hair warmer or cooler, redder or greener than the word it was read by says, as deep at 550 nm: its dye, what
// warmth a lightener left, and the yellow of keratin.
Fibre retoned(Fibre f, double warmer, double redder) {
  constexpr double kRedPeak = 520, kRedWidth = 45;  // nm; prior: about where red dyes absorb
  constexpr double kYellowPerWarmth = 1.5;          // of the yellow of keratin per share of warmth; prior
  constexpr int kMiddle = 15;                       // 550 nm
  static const Pigments p = pigments(Constants{});
  const double wanted = optical_depth(f, p)[kMiddle];
  for (int b = 0; b < kBands; ++b) {
    const double x = (band_nm(b) - kRedPeak) / kRedWidth;
    f.dye[b] *= std::max(0.0, 1 + warmer * (550 - band_nm(b)) / 150 + redder * std::exp(-x * x / 2));
  }
  f.oxidised *= std::exp(warmer);
  f.yellow_lost = std::clamp(f.yellow_lost - kYellowPerWarmth * warmer, -2.0, 1.0);
  const double keratin = p.keratin[kMiddle] - f.yellow_lost * p.yellow[kMiddle];
  const double pigment = optical_depth(f, p)[kMiddle] - keratin;
  const double same = pigment > 0 ? std::max(0.0, wanted - keratin) / pigment : 1;
  f.eumelanin *= same, f.pheomelanin *= same, f.oxidised *= same;
  for (double& d : f.dye) d *= same;
  return f;
}

// Natural pigment with another share of pheomelanin and about the same L*: at 550 nm a part of pheomelanin absorbs
// half as much as one of eumelanin.
Fibre with_pheomelanin(Fibre f, double change) {
  constexpr double kRelative = 0.5;
  const double total = f.eumelanin + f.pheomelanin;
  if (total <= 0) return f;
  const double share = f.pheomelanin / total, other = std::clamp(share + change, 0.0, 1.0);
  const double same_depth = total * (1 - kRelative * share) / (1 - kRelative * other);
  f.eumelanin = same_depth * (1 - other);
  f.pheomelanin = same_depth * other;
  return f;
}

double pheomelanin_sd() {
  for (const ConstantInfo& info : constant_infos)
    if (info.member == &Constants::pheomelanin_share) return info.sd;
  return 0;
}

// The level this head grows at: the first natural pigmented population, regrowth before lengths.
Reading natural_level_of(const Head& head) {
  for (const ZoneRef& z : zones(head))
    for (const Population& p : z.span->populations)
      if (p.kind == FibreKind::pigmented && p.origin == ColourOrigin::natural) return p.level;
  return {5, 1};
}

// How much wider a level's doubt is for how it was read.
double reading_doubt(const Span& s) {
  constexpr Constants c;
  return (s.read_in == ReadIn::lamp ? c.read_by_lamp_doubt : 1) * (s.read_damp ? c.read_damp_doubt : 1);
}

struct ZoneDrawer {
  const Span& span;
  const Head& head;
  int count;
  const std::vector<double>&shared_level, &shared_white, &shared_tone;

  ZoneDraws operator()(Columns& columns) const {
    ZoneDraws zone;
    zone.from_cm = span.from_cm;
    zone.to_cm = span.to_cm;
    zone.speed = span.strand_speed;
    if (span.strand_known) zone.speed_doubt = Constants{}.strand_leaves_doubt;
    zone.scenarios.resize(count);
    const std::vector<double> porosity = columns.next(DoubtSource::porosity);
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
    Population read_so = p;
    read_so.level.sd *= reading_doubt(span);
    add_read(zone, read_so, total, porosity, columns);
  }

  void add_read(ZoneDraws& zone, const Population& p, double total, const std::vector<double>& porosity,
                Columns& columns) const {
    const Reading natural = p.natural_level.value_or(natural_level_of(head));
    const Constants c;
    const FibreAsRead as_read(p, natural.value);
    const std::vector<double> level_z = columns.next(DoubtSource::level_reading);
    const std::vector<double> share_z = columns.next(DoubtSource::white_share);
    auto finish = [&](Fibre f, double porosity_z, double resistance_z) {
      f.porosity = std::clamp(span.porosity.value + span.porosity.sd * porosity_z, 0.0, kPorosityHigh);
      const bool resists = p.kind == FibreKind::white && span.resistance > 0;
      f.resistance = resists ? std::clamp(span.resistance + c.reading_resistance_sd * resistance_z, 0.0, 1.0) : 0;
      return f;
    };
    zone.nominal.shares.push_back(p.share.value / total);
    zone.nominal.fibres.push_back(finish(as_read.at(p.level.value, 1), 0, 0));
    // Heads of one level differ in tone; hair that was measured or coloured shows its own.
    const double tone_sd = p.origin == ColourOrigin::natural && !p.measured ? pheomelanin_sd() : 0;
    const bool by_word = p.origin != ColourOrigin::natural && !p.measured;
    const double warm_sd = p.origin == ColourOrigin::lightened ? c.lightened_warm_sd : c.reading_warm_sd;
    const std::vector<double> lift_z = columns.next(DoubtSource::lightening);
    const std::vector<double> warm_z = columns.next(DoubtSource::level_reading);
    const std::vector<double> red_z = columns.next(DoubtSource::level_reading);
    const std::vector<double> resistance_z = columns.next(DoubtSource::uptake);
    for (int s = 0; s < count; ++s) {
      const double z = std::sqrt(kSharedVariance) * shared_level[s] + std::sqrt(1 - kSharedVariance) * level_z[s];
      const double w = std::sqrt(kSharedVariance) * shared_white[s] + std::sqrt(1 - kSharedVariance) * share_z[s];
      zone.scenarios[s].shares.push_back(std::clamp(p.share.value + p.share.sd * w, 0.0, 1.0));
      Fibre read = as_read.at(p.level.value + p.level.sd * z, std::exp(c.lift_under_sd * lift_z[s]));
      if (by_word) read = retoned(read, warm_sd * warm_z[s], c.reading_red_sd * red_z[s]);
      read = with_pheomelanin(read, tone_sd * shared_tone[s]);
      zone.scenarios[s].fibres.push_back(finish(read, porosity[s], resistance_z[s]));
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

std::string_view code(DoubtSource source) {
  static constexpr std::string_view codes[kDoubtSources] = {
      "doubt_from_level_reading", "doubt_from_white_share", "doubt_from_porosity", "doubt_from_white_look",
      "doubt_from_lightening",    "doubt_from_uptake",      "doubt_from_blend",    "doubt_from_shade_name"};
  return codes[static_cast<int>(source)];
}

Draws draw(const Head& head, int count, double doubt, std::optional<DoubtSource> only) {
  Columns columns(count, doubt, only);
  Draws draws;
  draws.constants = draw_constants(count, columns);
  draws.name_doubt = columns.uses(DoubtSource::shade_name) ? doubt : 0;
  const std::vector<double> shared_level = columns.next(DoubtSource::level_reading);
  const std::vector<double> shared_white = columns.next(DoubtSource::white_share);
  const std::vector<double> shared_tone = columns.next(DoubtSource::level_reading);
  for (const ZoneRef& z : zones(head)) {
    draws.zones.push_back(ZoneDrawer{*z.span, head, count, shared_level, shared_white, shared_tone}(columns));
    draws.zones.back().id = z.id;
  }
  return draws;
}

}  // namespace strandline
