// Rules of the trade, on the shelf's own neutral shades by their reference process.
#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include "evidence/rows.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

Lab colour(const Fibre& f) { return lab(reflectance(optical_depth(f, pigments(Constants{}))), daylight()); }

class Bench {
 public:
  explicit Bench(const Shelf& shelf) : shelf_(shelf) {}

  const Product* shade(ProductClass cls, double level, Tone tone) const {
    for (const Product& p : shelf_.products)
      if (p.cls == cls && p.level == level && p.tone == tone) return &p;
    return nullptr;
  }
  const Product* developer(double percent) const {
    for (const Product& p : shelf_.products)
      if (p.cls == ProductClass::developer && p.peroxide_percent == percent) return &p;
    return nullptr;
  }
  // One fibre away from the scalp after `shade` (with some corrector) and developer at 1:1 for the range's full time.
  Fibre after(const Fibre& f, const Product* shade, double percent, const Product* corrector = nullptr,
              double share = 0) const {
    const Product* dev = developer(percent);
    const Range* range = shade ? find_range(shelf_, shade->range) : nullptr;
    if (!dev || !range) return f;
    Formula formula;
    formula.range = range->id;
    formula.parts = {{shade->id, 30 * (1 - share)}, {dev->id, 30 * reference(*range).ratio}};
    if (corrector && share > 0) formula.parts.push_back({corrector->id, 30 * share});
    formula.minutes = range->minutes.target;
    const auto bowl = chemistry(formula, shelf_);
    if (!bowl) return f;
    return treated(f, treatment(*bowl, 5, 15, Constants{}), selectivity(f, Constants{}), Constants{});
  }
  // White hair, as a bowl left it, under what the shade offers.
  Lab of_load(const Product& shade, Fibre white) const {
    white.dye = saturated(offered(shade, *find_range(shelf_, shade.range)));
    return colour(white);
  }
  double level_after(double natural, double shade_level, double percent) const {
    const Product* s = shade(ProductClass::permanent, shade_level, Tone::natural);
    return s ? level_of_lightness(colour(after(natural_fibre(natural, Tone::natural), s, percent)).l) : kNone;
  }

 private:
  const Shelf& shelf_;
};

std::string text(double v) {
  std::string s = std::to_string(static_cast<int>(v));
  return v == std::floor(v) ? s : s + "." + std::to_string(static_cast<int>(std::lround(10 * (v - std::floor(v)))));
}

void volume_rule(Rows& rows, const Bench& bench) {
  struct Lift {
    double percent, low, high;
  };
  for (const Lift& l : {Lift{3, -1, 1}, Lift{6, 1, 2}, Lift{9, 2, 3}, Lift{12, 3, 4}})
    for (int natural = 3; natural <= (l.percent <= 9 ? 7 : 6); ++natural) {
      const double claimed = natural + l.percent / 3;
      const double lift = bench.level_after(natural, std::min(claimed, 10.0), l.percent) - natural;
      rows.within("volume_rule.natural" + std::to_string(natural) + "." + text(l.percent) + "percent", l.low - 0.25,
                  l.high + 0.25, lift, practice());
    }
}

void average_rule(Rows& rows, const Bench& bench) {
  for (int natural = 2; natural <= 7; ++natural)
    for (int up = 1; up <= 4 && natural + up <= 10; ++up)
      rows.about("average_rule.natural" + std::to_string(natural) + ".shade" + std::to_string(natural + up),
                 natural + up / 2.0, 0.7, bench.level_after(natural, natural + up, 6),
                 practice("common practice of one school"));
}

// Every cell of natural 1–7 × shade natural … +4 × 3, 6, 9, 12 %: lift by strength stopped by the shade (± 0.25), or
// the mean of natural and shade (± 0.7). The schools contradict each other; a result must please one of them, but for
// one cell in twenty.
void lift_grid(Rows& rows, const Bench& bench) {
  int cells = 0, within = 0, mean_cells = 0, mean_within = 0;
  for (int step = 0; step < 4; ++step)
    for (int natural = 1; natural <= 7; ++natural)
      for (int shade = natural; shade <= std::min(natural + 4, 10); ++shade) {
        const double percent = 3 * (step + 1), got = bench.level_after(natural, shade, percent);
        const double low = std::min(natural + step, shade) - 0.25, high = std::min(natural + step + 1, shade) + 0.25;
        const bool volume = got >= low && got <= high, mean = std::abs(got - (natural + shade) / 2.0) <= 0.7;
        ++cells, within += volume || mean;
        if (percent == 6) ++mean_cells, mean_within += mean;
      }
  rows.within("lift_grid.within_a_school", 0.95, 1, static_cast<double>(within) / cells, practice());
  rows.within("lift_grid.mean_at_6percent", 0.95, 1, static_cast<double>(mean_within) / mean_cells,
              practice("common practice of one school"));
}

void white_beside_pigmented(Rows& rows, const Bench& bench) {
  const Product* seven = bench.shade(ProductClass::permanent, 7, Tone::natural);
  rows.about("white_beside_pigmented.white", 7, 0.5, level_of_lightness(colour(bench.after(white_fibre(), seven, 6)).l),
             practice());
  rows.about("white_beside_pigmented.pigmented", 5, 0.5, bench.level_after(3, 7, 6), practice());
}

// A shade on white hair by its reference process shows its load whole.
void reference_process(Rows& rows, const Bench& bench) {
  for (double level : {4.0, 6.0, 8.0}) {
    const Product* s = bench.shade(ProductClass::permanent, level, Tone::natural);
    const Fibre white = bench.after(white_fibre(), s, 6);
    const double miss = s ? delta_e_2000(colour(white), bench.of_load(*s, white)) : kNone;
    rows.within("reference_process.shade" + text(level), 0, 1, miss, law_or_identity("by definition"));
  }
}

Fibre lightened_by(double natural, double exposure) {
  return lightened(natural_fibre(natural, Tone::natural), Treatment{.exposure = exposure}, Constants{});
}

// Natural hair lightened until it has the L* of `level`.
Fibre lightened_to(double natural, double level) {
  double low = 0, high = 15;
  for (int i = 0; i < 50; ++i) {
    const double middle = (low + high) / 2;
    (colour(lightened_by(natural, middle)).l < lightness_of_level(level) ? low : high) = middle;
  }
  return lightened_by(natural, high);
}

double hue_at(double level) { return lch(colour(lightened_to(3, level))).h; }

void warmth(Rows& rows) {
  // Hue turns from red through orange to yellow as pigment goes.
  int backwards = 0;
  for (int level = 5; level <= 9; ++level) backwards += hue_at(level) <= hue_at(level - 1);
  rows.within("warmth_exposed.hue_steps_backwards", 0, 0, backwards, practice());
  // Red lies at 25 degrees of CIELAB's hue, yellow at 90 (unique hues, from memory), orange half way.
  constexpr double kRed = 25, kYellow = 90, kOrange = (kRed + kYellow) / 2, kGold = (kOrange + kYellow) / 2;
  rows.within("warmth_exposed.red_orange.level5", kRed, kGold, hue_at(5), practice());
  rows.within("warmth_exposed.yellow.level9", kGold, kYellow + (kYellow - kGold), hue_at(9), practice());
}

Fibre with_corrector(Fibre f, std::string_view kind, double strength) {
  for (int b = 0; b < kBands; ++b) {
    auto bell = [&](double peak, double sd) { return std::exp(-std::pow((band_nm(b) - peak) / sd, 2) / 2); };
    f.dye[b] += strength * (kind == "violet" ? bell(565, 42) : bell(605, 46));
  }
  return f;
}

// The least chroma a corrector leaves, and what it leaves at the dose that costs `darker` of L*.
struct Tamed {
  double least = 1, at_moderate_dose = 1;
};

Tamed tamed(const Fibre& f, const char* kind, double darker) {
  Tamed t;
  const double before = colour(f).l;
  for (double strength = 0.005; strength < 1.2; strength *= 1.05) {
    const Fibre toned = with_corrector(f, kind, strength);
    const double left = lch(colour(toned)).c / lch(colour(f)).c;
    t.least = std::min(t.least, left);
    if (before - colour(toned).l <= darker) t.at_moderate_dose = left;
  }
  return t;
}

void counter_tone(Rows& rows) {
  const Fibre yellow = lightened_to(3, 9), orange = lightened_to(3, 6.5);
  // A moderate dose takes about half a level of depth; a strong one takes chroma from any hair by darkening it.
  constexpr double kHalfALevel = 3;
  const Tamed violet = tamed(orange, "violet", kHalfALevel), blue = tamed(orange, "blue", kHalfALevel);
  rows.within("counter_tone.violet_on_yellow", 0, 0.5, tamed(yellow, "violet", kHalfALevel).least, practice());
  rows.within("counter_tone.blue_on_orange", 0, 0.5, blue.least, practice());
  rows.within("counter_tone.violet_on_orange_leaves_warmth", 0.5, 1, violet.at_moderate_dose, practice());
  rows.within("counter_tone.blue_takes_more_of_orange_than_violet", 0.02, 1,
              violet.at_moderate_dose - blue.at_moderate_dose, practice());
}

// Lightened hair taken down to 6 without a filler lacks the warm ground; with one it has it.
void filling(Rows& rows, const Bench& bench) {
  Fibre light = lightened_to(4, 9.5);
  light.porosity = 2.2;
  const Product* six = bench.shade(ProductClass::demi, 6, Tone::natural);
  const Product* filler = bench.shade(ProductClass::demi, 7, Tone::copper);
  const double warm = colour_of(6, Tone::natural).a;
  const Fibre filled = bench.after(light, filler, 1.5);
  // One unit of a* is about what an eye can tell.
  constexpr double kSeen = 1, kBeyondHair = 12;
  rows.within("fill.without_is_flat", -kBeyondHair, -kSeen, colour(bench.after(light, six, 1.5)).a - warm, practice());
  rows.within("fill.with_is_warm", -kSeen, kBeyondHair, colour(bench.after(filled, six, 1.5)).a - warm, practice());
}

void cool_lift(Rows& rows, const Bench& bench) {
  const Product* ash = bench.shade(ProductClass::permanent, 8, Tone::ash);
  const Product* near = bench.shade(ProductClass::permanent, 7, Tone::ash);
  // Beyond two levels of lift an ash shade still reads warmer than natural hair; within them it does not.
  const Named far = name_colour(colour(bench.after(natural_fibre(5, Tone::natural), ash, 9)));
  const Named close = name_colour(colour(bench.after(natural_fibre(6, Tone::natural), near, 6)));
  constexpr double kNeutral = 1, kBeyondHair = 30;  // a*b* along the warm axis
  rows.within("cool_lift.ash_three_levels_up_is_warm", kNeutral, kBeyondHair, far.warmth, practice());
  rows.within("cool_lift.ash_one_level_up_is_not", -kBeyondHair, kNeutral, close.warmth, practice());
}

}  // namespace

void trade_rows(Rows& rows, const Shelf& shelf) {
  const Bench bench(shelf);
  volume_rule(rows, bench);
  average_rule(rows, bench);
  lift_grid(rows, bench);
  white_beside_pigmented(rows, bench);
  reference_process(rows, bench);
  warmth(rows);
  counter_tone(rows);
  filling(rows, bench);
  cool_lift(rows, bench);
}

}  // namespace strandline
