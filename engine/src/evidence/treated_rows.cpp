// Hair that was treated: what is published of white hair under peroxide, of the course of a lightening, of fade.
//
// No pair of colours before and after a dye could be read; these are differences, single numbers and a strand test read
// by eye. What rows were fitted is said by each.
#include <cmath>
#include <string>

#include "evidence/rows.h"
#include "strandline/existing.h"
#include "strandline/fade.h"
#include "strandline/levels.h"
#include "strandline/optics.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

Lab colour(const Fibre& f, const Constants& c = {}) {
  return lab(reflectance(optical_depth(f, pigments(c))), weights(Light::daylight, Observer::cie_1964_10deg));
}

Treatment on_lengths(ProductClass cls, double bowl_percent, double minutes) {
  BowlChemistry bowl;
  bowl.cls = cls;
  bowl.peroxide_percent = bowl_percent;
  bowl.minutes = minutes;
  return treatment(bowl, 5, 15, Constants{});
}

// Constants whose white hair has this b*.
Constants as_yellow(double b) {
  double low = 0, high = 1;
  Constants c;
  for (int i = 0; i < 50; ++i) {
    c.keratin_yellow_tau_550 = (low + high) / 2;
    (colour(white_fibre(), c).b < b ? low : high) = c.keratin_yellow_tau_550;
  }
  return c;
}

void white_hair(Rows& rows) {
  const Basis thesis =
      outside("Richena, thesis on white hair, Unicamp: abstract, b* 10 (one head) and 20 (blend); geometry not stated");
  rows.within("white.yellow", 10, 20, colour(white_fibre()).b, thesis);
  // Neither strength nor minutes are told: no gentler than 3 % for 20 min, no stronger than 12 % for an hour.
  const Constants yellow = as_yellow(20);
  auto left = [&](double bowl_percent, double minutes) {
    const Treatment t = on_lengths(ProductClass::permanent, bowl_percent, minutes);
    return colour(lightened(white_fibre(), t, yellow), yellow).b;
  };
  const Basis bleached = fitted("the same: peroxide takes b* from 20 to 8, its strength and minutes not told");
  constexpr double kAfter = 8, kDigit = 0.5, kWhiteHair = 20;
  rows.within("white.peroxide_takes_yellow.strongest", 0, kAfter + kDigit, left(6, 60), bleached);
  rows.within("white.peroxide_takes_yellow.gentlest", kAfter - kDigit, kWhiteHair, left(1.5, 20), bleached);
}

// One strand a point: level on a chart of 20 steps, black-brown hair, powder lightener with two parts of 6 %, no heat.
// Steps of that chart are not levels, so shares of the whole gain are compared; a reading is good to one step.
void course_of_lightening(Rows& rows) {
  struct Point {
    double minutes, steps;
  };
  constexpr double kLast = 600, kGain = 11, kNaturalLevel = 2;
  const Basis source = fitted("a practitioner's strand test, level read by eye on a chart of 20 steps");
  auto gain = [&](double minutes) {
    const Treatment t = on_lengths(ProductClass::lightener, 4, minutes);
    const Fibre f = lightened(natural_fibre(kNaturalLevel, Tone::natural), t, Constants{});
    return level_of_lightness(colour(f).l) - kNaturalLevel;
  };
  for (const Point& p : {Point{10, 4}, Point{20, 6}, Point{30, 8}, Point{50, 9}, Point{120, 10}})
    rows.about("lightening_course." + std::to_string(static_cast<int>(p.minutes)) + "min", p.steps / kGain, 1 / kGain,
               gain(p.minutes) / gain(kLast), source);
}

// ΔE*ab of a dye on average hair of this kind after washes and hours of full light.
double change(const Population& dyed, double natural_level, double washes, double hours) {
  const Fibre fresh = fibre_as_read(dyed, dyed.level.value, natural_level);
  Fibre then = fresh;
  const double left = dye_left(ProductClass::permanent, redness(fresh.dye), 1, washes, hours, Constants{});
  for (double& d : then.dye) d *= left;
  return delta_e_ab(colour(fresh), colour(then));
}

Population dyed(FibreKind kind, double level, Tone tone) {
  Population p;
  p.kind = kind;
  p.origin = ColourOrigin::tinted;
  p.level = {level, 0};
  p.tone = tone;
  return p;
}

void fading(Rows& rows) {
  const Population auburn = dyed(FibreKind::white, 5, Tone::copper), red = dyed(FibreKind::white, 5, Tone::red),
                   violet = dyed(FibreKind::white, 4, Tone::violet);
  // A reported ± 0.7 counts twice.
  constexpr double kTwice = 1.4;
  const char* lamp = "J Cosmet Sci 56:416 (2005), medium auburn on unpigmented hair";
  rows.about("fade.auburn.4_washes", 3.6, kTwice, change(auburn, 5, 4, 0), fitted(lamp));
  rows.about("fade.auburn.4_washes_16_hours", 7.3, kTwice, change(auburn, 5, 4, 16), fitted(lamp));
  rows.about("fade.auburn.4_washes_32_hours", 10.7, kTwice, change(auburn, 5, 4, 32), fitted(lamp));
  const char* pyrazole = "J Cosmet Sci 56:416 (2005), abstract, a red";
  rows.within("fade.red.10_washes", 4, 6, change(red, 5, 10, 0), fitted(pyrazole));
  rows.within("fade.red.4_washes_32_hours", 14, 16, change(red, 5, 4, 32), outside(pyrazole));
  const Basis table = fitted("J Cosmet Sci 72:278 (2021), table III, hair with and without copper");
  rows.within("fade.red.12_washes", 5.6, 6.7, change(red, 5, 12, 0), table);
  rows.within("fade.violet_brown.12_washes", 5.7, 6.1, change(violet, 5, 12, 0), table);
  // What is kept is told of colours: of a dark dye much may go before it shows.
  const Fibre brown = fibre_as_read(dyed(FibreKind::white, 5, Tone::natural), 5, 5);
  Fibre bare = brown;
  bare.dye = Spectrum{};
  const double all = delta_e_ab(colour(brown), colour(bare));
  rows.within("fade.brown.colour_kept_after_30_washes", 0.85, 1,
              1 - change(dyed(FibreKind::white, 5, Tone::natural), 5, 30, 0) / all,
              fitted("IFSCC Mag 11:139 (2008), more than 0.9 for modern shades; less for others"));
  const double on_brown = change(dyed(FibreKind::pigmented, 5, Tone::copper), 4, 4, 32);
  rows.within("fade.on_brown_against_on_white", 0, 1, on_brown / change(auburn, 5, 4, 32),
              outside("J Cosmet Sci 56:416 (2005): dyed brown hair changes less than dyed white hair"));
}

// How much faster a dye goes into hair that was lightened, the 6 % taken for what was mixed 1 : 1 as the fit does. The
// reported limits of both readings are taken at their far ends.
void damage(Rows& rows) {
  const Constants c;
  auto faster = [&](const Treatment& t) { return std::pow(c.porosity_diffusion_factor, t.wear); };
  const Basis uranin = fitted("J Soc Cosmet Chem 44:351 (1993), table III, 95 % limits");
  rows.within("damage.one_hour_of_6_percent", (9.78 - 3.67) / (3.59 + 0.67), (9.78 + 3.67) / (3.59 - 0.67),
              faster(on_lengths(ProductClass::permanent, 3, 60)), uranin);
  rows.within("damage.half_hour_of_lightener", (45.2 - 28.7) / (3.59 + 0.67), (45.2 + 28.7) / (3.59 - 0.67),
              faster(on_lengths(ProductClass::lightener, 6, 30)), uranin);
}

}  // namespace

void treated_rows(Rows& rows) {
  white_hair(rows);
  course_of_lightening(rows);
  fading(rows);
  damage(rows);
  rows.within("blend.textile_m", 0.097, 0.15, Constants{}.blend_m,
              outside("Philips-Invernizzi 2002; Yang and others 2021 (abstract): textile fibres mixed at random"));
}

}  // namespace strandline
