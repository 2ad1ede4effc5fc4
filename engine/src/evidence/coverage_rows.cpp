// Do the stated ranges and likelihoods hold a truth that the engine did not make? (M13)
#include <algorithm>
#include <array>
#include <cmath>

#include "evidence/rows.h"
#include "evidence/told.h"
#include "evidence/truth.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/levels.h"

namespace strandline {
namespace {

constexpr int kCases = 120, kScenarios = 128;
constexpr std::uint64_t kSeed = 20261129;
constexpr size_t kShifts = 4;
const std::vector<truth::Shift>& shifts() {
  static const std::vector<truth::Shift> all = {{1, 1}, {0.8, 1}, {1.25, 1}, {1, 0.7}};
  return all;
}

Basis source() { return simulated("simulated truth of its own code: 120 zones of each kind, seed 20261129"); }

struct Interval {
  double low = 0, high = 0;
  bool holds(double x) const { return x >= low && x <= high; }
};

// The middle nine tenths of the scenarios, ends interpolated.
Interval middle(std::vector<double> v) {
  constexpr double kShare = 0.9;
  std::sort(v.begin(), v.end());
  auto at = [&](double q) {
    const double i = std::clamp(q * static_cast<double>(v.size()) - 0.5, 0.0, static_cast<double>(v.size() - 1));
    const auto k = static_cast<size_t>(i);
    const double w = i - static_cast<double>(k);
    return k + 1 < v.size() ? (1 - w) * v[k] + w * v[k + 1] : v[k];
  };
  return {at((1 - kShare) / 2), at((1 + kShare) / 2)};
}

// What would be said of the zone: ranges, and how likely it lands on a wish near what is expected.
struct Said {
  Interval l, a, b;
  Lab wish{};
  double likelihood = 0;
};

bool lands(const Lab& wish, const Lab& seen) {
  const Constants c;
  return std::abs(level_of_lightness(seen.l) - level_of_lightness(wish.l)) <= c.level_tolerance &&
         std::hypot(seen.a - wish.a, seen.b - wish.b) <= c.tone_tolerance;
}

// A wish lies off what is expected, now to one side and now to another, as shades allow.
Lab wish_near(const Lab& expected, int index) {
  constexpr double kLevels = 0.5, kTone = 3, kGolden = 0.618033988749895, kPlastic = 0.754877666246693;
  auto part = [index](double step) { return 2 * (index * step - std::floor(index * step)) - 1; };
  const double level = level_of_lightness(expected.l) + kLevels * part(kGolden);
  return {lightness_of_level(level), expected.a + kTone * part(kPlastic),
          expected.b + kTone * part(kPlastic * kPlastic)};
}

Said said(const truth::Known& k, int index) {
  Draws draws = draw(head_of(k), kScenarios);
  ZoneDraws& zone = draws.zones[0];
  for (const truth::Bowl& b : k.bowls)
    if (const auto bowl = bowl_of(b)) apply(*bowl, zone, draws);
  std::vector<double> l, a, b;
  Said s;
  s.wish = wish_near(view(zone.nominal, zone.kinds, draws.nominal).lab, index);
  for (size_t i = 0; i < zone.scenarios.size(); ++i) {
    const Lab c = view(zone.scenarios[i], zone.kinds, draws.constants[i]).lab;
    l.push_back(c.l), a.push_back(c.a), b.push_back(c.b);
    s.likelihood += lands(s.wish, c) / static_cast<double>(zone.scenarios.size());
  }
  s.l = middle(l), s.a = middle(a), s.b = middle(b);
  return s;
}

// Over the cases of one kind.
struct Tally {
  int n = 0;
  double l = 0, a = 0, b = 0, likelihood_said = 0, landed = 0;
  std::vector<double> half_widths;
  void count(const Said& s, const Lab& truth) {
    ++n, l += s.l.holds(truth.l), a += s.a.holds(truth.a), b += s.b.holds(truth.b);
    likelihood_said += s.likelihood, landed += lands(s.wish, truth);
    half_widths.push_back((level_of_lightness(s.l.high) - level_of_lightness(s.l.low)) / 2);
  }
  double share(double hits) const { return hits / std::max(n, 1); }
};

void held(Rows& rows, const std::string& id, const Tally& t, double low, double high) {
  rows.within(id + ".lightness", low, high, t.share(t.l), source());
  rows.within(id + ".a", low, high, t.share(t.a), source());
  rows.within(id + ".b", low, high, t.share(t.b), source());
}

}  // namespace

void coverage_rows(Rows& rows) {
  constexpr std::array<const char*, truth::kKinds> kNames = {"tint",      "demi",    "toner",
                                                             "lightener", "remover", "second_step"};
  constexpr std::array<const char*, kShifts> kWorlds = {"", "dye_0.8.", "dye_1.25.", "rate_0.7."};
  std::array<std::array<Tally, kShifts>, truth::kKinds> tallies;
  Tally red, resistant, coloured;
  for (int kind = 0; kind < truth::kKinds; ++kind)
    for (int i = 0; i < kCases; ++i) {
      const truth::Case c = truth::simulate(kSeed, static_cast<truth::Kind>(kind), i, shifts());
      const Said s = said(c.known, i);
      for (size_t w = 0; w < kShifts; ++w) tallies[kind][w].count(s, c.after[w]);
      if (c.known.red) red.count(s, c.after[0]);
      if (c.known.resistance > 0) resistant.count(s, c.after[0]);
      if (c.known.past == truth::Past::tinted) coloured.count(s, c.after[0]);
    }
  for (int kind = 0; kind < truth::kKinds; ++kind)
    for (size_t w = 0; w < kShifts; ++w) {
      Tally& t = tallies[kind][w];
      const bool bare = kind == static_cast<int>(truth::Kind::lightener);
      const bool deposits = !bare && kind != static_cast<int>(truth::Kind::remover);
      if (!deposits && shifts()[w].dye != 1) continue;
      const std::string id = std::string("coverage.") + kWorlds[w] + kNames[kind];
      held(rows, id, t, w == 0 ? 0.85 : 0.75, w == 0 ? 0.95 : 1);
      if (w > 0) continue;
      rows.within(id + ".likelihood_said_less_was", -0.07, 0.07, t.share(t.likelihood_said - t.landed), source());
      // A range that holds everything says nothing.
      const bool limited = bare || kind <= static_cast<int>(truth::Kind::toner);
      auto half = t.half_widths.begin() + t.n / 2;
      std::nth_element(t.half_widths.begin(), half, t.half_widths.end());
      if (limited) rows.within(id + ".median_half_width_levels", 0, bare ? 1.1 : 0.7, *half, source());
    }
  held(rows, "coverage.reds", red, 0.85, 0.95);
  held(rows, "coverage.resistant_white", resistant, 0.85, 0.95);
  held(rows, "coverage.coloured_hair", coloured, 0.85, 0.95);
}

}  // namespace strandline
