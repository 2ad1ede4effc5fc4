#include "evidence/truth.h"

#include <algorithm>
#include <cmath>

#include "evidence/truth_chemistry.h"
#include "evidence/truth_light.h"
#include "evidence/truth_random.h"
#include "evidence/truth_shade.h"

namespace strandline::truth {
namespace {

Word some_word(Random& random, bool cool) {
  const double pick = random.uniform(0, 1);
  if (cool) return pick < 0.3 ? Word::ash : pick < 0.6 ? Word::violet : pick < 0.85 ? Word::beige : Word::natural;
  return pick < 0.45   ? Word::natural
         : pick < 0.6  ? Word::ash
         : pick < 0.7  ? Word::gold
         : pick < 0.85 ? Word::copper
                       : Word::red;
}

Bowl bowl_of(BowlClass cls, Random& random) {
  Bowl b;
  b.cls = cls;
  if (cls == BowlClass::permanent)
    b.bottle_percent = 3 * (1 + std::floor(random.uniform(0, 4))), b.minutes = random.uniform(25, 45);
  if (cls == BowlClass::lightener)
    b.bottle_percent = 3 * (1 + std::floor(random.uniform(0, 3))), b.ratio = 2, b.minutes = random.uniform(15, 45);
  if (cls == BowlClass::demi) b.bottle_percent = 1.5, b.ratio = 2, b.minutes = random.uniform(8, 20);
  if (cls == BowlClass::remover) b.bottle_percent = 0, b.ratio = 1, b.minutes = random.uniform(15, 25);
  return b;
}

std::vector<BowlClass> classes_of(Kind kind, Past past) {
  switch (kind) {
    case Kind::tint:
      return {BowlClass::permanent};
    case Kind::demi:
    case Kind::toner:
      return {BowlClass::demi};
    case Kind::lightener:
      return {BowlClass::lightener};
    case Kind::remover:
      return {BowlClass::remover};
    case Kind::second_step:
      break;
  }
  return past == Past::tinted ? std::vector{BowlClass::remover, BowlClass::demi}
                              : std::vector{BowlClass::lightener, BowlClass::demi};
}

Past past_of(Kind kind, double pick) {
  if (kind == Kind::toner) return Past::lightened;
  if (kind == Kind::remover) return Past::tinted;
  const double coloured = kind == Kind::tint || kind == Kind::demi ? 0.35 : kind == Kind::lightener ? 0.2 : 0.4;
  return pick < coloured ? Past::tinted : Past::natural;
}

// The head as it is: one kind of pigmented hair, white beside it where nothing was done yet.
struct Subject {
  Hair pigmented, white;
  double white_share = 0, natural_level = 5;
  Condition condition;
};

// Lightened until it has this L*.
Hair lifted(Hair hair, double lightness, const Light& light) {
  const Hair start = hair;
  double low = 0, high = 10;
  for (int i = 0; i < 20; ++i) {
    const double x = (low + high) / 2;
    hair = start;
    hair.eumelanin = start.eumelanin * std::exp(-x);
    hair.pheomelanin = start.pheomelanin * std::exp(-0.4 * x);
    hair.intermediate = 0.3 * start.eumelanin * (std::exp(-0.33 * x) - std::exp(-x)) / 0.67;
    (light.colour(hair).l < lightness ? low : high) = x;
  }
  return hair;
}

// A tint of the past, as colourists mix it: 3 % to go darker, 6 % up to a level lighter, else 9 %; some of it washed
// out.
void tint(Subject& s, double shade, Word word, const Light& light, const Ladder& ladder, const Chemistry& chemistry,
          Random& random) {
  Bowl bowl;
  bowl.bottle_percent = shade < s.natural_level - 0.5 ? 3 : shade < s.natural_level + 1 ? 6 : 9;
  const Spectrum load = shade_of(shade + random.normal(0.3, 0.2), word, light, ladder, random);
  chemistry.treat(s.pigmented, s.condition, chemistry.dose(bowl, load, shade), 1, {});
  const double kept = random.uniform(0.75, 1);
  for (double& d : s.pigmented.dye) d *= kept;
}

Subject subject_of(Past past, const Light& light, const Ladder& ladder, const Chemistry& chemistry, Random& random) {
  Subject s;
  s.natural_level = random.uniform(past == Past::lightened ? 3 : 2, past == Past::natural ? 8 : 6.5);
  s.pigmented = light.natural(ladder.lightness(s.natural_level));
  s.condition = {random.uniform(0.7, 1.6), 0};
  const double seen = past == Past::lightened ? random.uniform(7.5, 9.6) : s.natural_level + random.uniform(-1, 2);
  const Word word = some_word(random, false);
  const double share = random.uniform(0, 1) < 0.35 ? 0 : random.uniform(0.1, 0.9);
  const double resistance = random.uniform(0, 1) < 0.6 ? 0 : random.uniform(0.3, 1);
  if (past == Past::natural) {
    s.white_share = share, s.condition.resistance = share > 0 ? resistance : 0;
  } else if (past == Past::lightened) {
    s.pigmented = lifted(s.pigmented, ladder.lightness(seen), light);
    s.condition.porosity = random.uniform(1.5, 2.4);
  } else {
    s.condition.porosity = random.uniform(0.7, 1.4);
    tint(s, std::clamp(seen, 2.0, 8.0), word, light, ladder, chemistry, random);
  }
  return s;
}

// Readers have a bias anywhere within four tenths of a level, and no two readings agree.
void read(Known& k, const Subject& s, const Light& light, const Ladder& ladder, Random& random) {
  auto eye = [&](double level) { return level + random.uniform(-0.4, 0.4) + random.normal(0, 0.2); };
  const Lab seen = light.colour(s.pigmented);
  k.level = std::clamp(eye(ladder.level(seen.l)), 1.0, 10.0);
  k.natural_level = std::clamp(eye(s.natural_level), 1.0, 10.0);
  const Lab natural = light.colour(light.natural(seen.l));
  Lab looked = seen;
  looked.a += random.normal(0, 1.2), looked.b += random.normal(0, 1.2);
  const Word word = nearest_word(natural, looked);
  k.tone = k.past == Past::natural ? Word::natural : k.past == Past::lightened ? Word::gold : word;
  k.white_share = s.white_share > 0 ? std::clamp(s.white_share + random.normal(0, 0.06), 0.02, 0.98) : 0;
  k.porosity = s.condition.porosity + random.normal(0, 0.25);
  k.resistance = s.condition.resistance > 0 ? std::clamp(s.condition.resistance + random.normal(0, 0.1), 0.0, 1.0) : 0;
}

}  // namespace

Case simulate(std::uint64_t seed, Kind kind, int index, const std::vector<Shift>& shifts) {
  Random random(seed + static_cast<std::uint64_t>(kind), index);
  Case c;
  Known& k = c.known;
  k.kind = kind, k.past = past_of(kind, random.uniform(0, 1));
  const bool at_scalp = k.past == Past::natural && random.uniform(0, 1) < 0.5;
  k.from_cm = at_scalp ? 0 : 5, k.to_cm = at_scalp ? 2 : 15;
  const Light light(random), range_hair = Light::usual();
  const Ladder ladder(random);
  const Chemistry chemistry(random, light, ladder);
  Subject s = subject_of(k.past, light, ladder, chemistry, random);
  read(k, s, light, ladder, random);
  c.before = light.blend(s.pigmented, s.white, s.white_share);

  // Without a shift first: the shade of a second bowl follows what usually comes out.
  const double warmth = chemistry.warmth(k.from_cm, k.to_cm);
  Hair expected = s.pigmented;
  Condition foreseen{s.condition.porosity, 0};
  std::vector<Dose> doses;
  for (BowlClass cls : classes_of(kind, k.past)) {
    Bowl bowl = bowl_of(cls, random);
    const bool demi = cls == BowlClass::demi, pale = demi && kind != Kind::demi && k.past != Past::tinted;
    const double now = std::floor(ladder.level(light.colour(expected).l));
    const double shade = std::clamp(now + std::floor(random.uniform(0, demi ? 2 : 4)), 2.0, 10.0);
    const Word tone = some_word(random, pale);
    Spectrum load{};
    if (demi || cls == BowlClass::permanent) {
      load = shade_of(shade + random.normal(demi ? 1.2 : 0.3, 0.2), tone, range_hair, ladder, random);
      Hair swatch;
      swatch.dye = load;
      bowl.swatch = range_hair.reflectance(swatch);
      k.red = k.red || tone == Word::copper || tone == Word::red;
    }
    doses.push_back(chemistry.dose(bowl, load, shade));
    chemistry.treat(expected, foreseen, doses.back(), warmth, {});
    k.bowls.push_back(bowl);
  }
  for (const Shift& shift : shifts) {
    Hair pigmented = s.pigmented, white = s.white;
    Condition of_pigmented{s.condition.porosity, 0}, of_white = s.condition;
    for (const Dose& dose : doses) {
      chemistry.treat(pigmented, of_pigmented, dose, warmth, shift);
      chemistry.treat(white, of_white, dose, warmth, shift);
    }
    c.after.push_back(light.blend(pigmented, white, s.white_share));
  }
  return c;
}

}  // namespace strandline::truth
