#include "evidence/truth_salon.h"

#include <algorithm>
#include <cmath>

#include "evidence/truth_chemistry.h"
#include "evidence/truth_light.h"
#include "evidence/truth_shade.h"

namespace strandline::truth {
namespace {

// Streams of numbers that belong to different things never meet.
enum Stream : std::uint64_t { kSalon = 101, kRange, kPerson, kColourist, kClient, kVisit, kSwatch, kHead };

Random stream(const SalonPlan& plan, Stream what, int index) { return {plan.seed * 1000 + what, index}; }

Nature drawn(Random random, double dye, double rate, double eye) {
  Nature n;
  n.dye = random.lognormal(1, dye), n.rate = random.lognormal(1, rate), n.eye = random.normal(0, eye);
  return n;
}

double to_half(double level) { return std::round(2 * level) / 2; }

}  // namespace

Nature nature_of_salon(const SalonPlan& p, const Differ& d) { return drawn(stream(p, kSalon, 0), d.salon, d.salon, 0); }
Nature nature_of_range(const SalonPlan& p, const Differ& d, int range) {
  return drawn(stream(p, kRange, range), d.range, d.range, 0);
}
Nature nature_of_person(const SalonPlan& p, const Differ& d, int person) {
  return drawn(stream(p, kPerson, person), d.person_dye, d.person_rate, 0);
}
Nature nature_of_colourist(const SalonPlan& p, const Differ& d, int colourist) {
  return drawn(stream(p, kColourist, colourist), 0, 0, d.eye);
}

Client::Client(const SalonPlan& plan, int person) {
  Random random = stream(plan, kClient, person);
  natural_level = random.uniform(3, 7.5);
  white_share = random.uniform(0, 1) < 0.5 ? 0 : random.uniform(0.1, 0.7);
  porosity = random.uniform(0.8, 1.3);
  colourist_ = static_cast<int>(random.uniform(0, kColourists));
  const double pick = random.uniform(0, 1);
  range_ = pick < 0.4 ? 0 : pick < 0.65 ? 1 : pick < 0.8 ? 2 : 3;
}

// Most people come for the same again; now and then another takes them, or another range.
Client::Wish Client::next(Random& random) const {
  Wish w;
  w.colourist = random.uniform(0, 1) < 0.85 ? colourist_ : static_cast<int>(random.uniform(0, kColourists));
  w.range = random.uniform(0, 1) < 0.85 ? range_ : static_cast<int>(random.uniform(0, kRanges));
  w.cls = w.range < 2 ? BowlClass::permanent : w.range == 2 ? BowlClass::demi : BowlClass::lightener;
  w.level = natural_level + random.normal(0, 0.1);
  const bool demi = w.cls == BowlClass::demi;
  w.shade = std::clamp(std::round(natural_level + random.uniform(-0.5, demi ? 1.5 : 3)), 2.0, 10.0);
  constexpr Word kTones[] = {Word::natural, Word::natural, Word::beige, Word::gold, Word::ash, Word::copper};
  w.tone = kTones[static_cast<int>(random.uniform(0, 6))];
  w.bottle_percent = demi                            ? 1.5
                     : w.cls == BowlClass::lightener ? 3 * (1 + std::floor(random.uniform(0, 3)))
                     : w.shade < natural_level       ? 3
                     : w.shade > natural_level + 1.5 ? 9
                                                     : 6;
  w.minutes = demi ? random.uniform(12, 20) : random.uniform(28, 42);
  return w;
}

void write_down(Record& r, double level, const Nature& colourist, const SalonPlan& plan, Random& random) {
  r.judged = std::clamp(to_half(level + colourist.eye + random.normal(0, 0.22)), 1.0, 10.0);
  const bool instrument = random.uniform(0, 1) < 0.3;
  if (instrument)
    r.measured =
        Lab{r.after.l + random.normal(0, 0.4), r.after.a + random.normal(0, 0.3), r.after.b + random.normal(0, 0.4)};
  const double off = random.uniform(1.5, 4) * (random.uniform(0, 1) < 0.5 ? -1 : 1);
  r.wrong = random.uniform(0, 1) < plan.wrong_share;
  if (!r.wrong) return;
  r.judged = std::clamp(to_half(level + off), 1.0, 10.0);
  if (r.measured) r.measured->l = std::clamp(r.measured->l + 6 * off, 12.0, 80.0), r.measured->b += 2 * off;
}

std::vector<Record> simulate_salon(const SalonPlan& plan) {
  const Differ differ;
  const Nature salon = nature_of_salon(plan, differ);
  const Ladder ladder;
  const Light range_hair = Light::usual();
  std::vector<Record> all;
  for (int visit = 0; visit < plan.visits; ++visit)
    for (int person = 0; person < plan.people; ++person) {
      // The same head each time: its light and its chemistry come from its own stream.
      Random head = stream(plan, kHead, person), random = stream(plan, kVisit, visit * plan.people + person);
      const Client client(plan, person);
      const Light light(head);
      const Chemistry chemistry(head, light, ladder);
      const Nature own = nature_of_person(plan, differ, person);
      const Client::Wish w = client.next(random);
      const Nature range = nature_of_range(plan, differ, w.range);
      const Nature eyes = nature_of_colourist(plan, differ, w.colourist);

      Record r;
      r.person = person, r.colourist = w.colourist, r.range = w.range, r.visit = visit;
      Known& k = r.known;
      k.from_cm = 0, k.to_cm = 2;
      const double seen = w.level + eyes.eye + random.normal(0, 0.22);
      k.level = k.natural_level = std::clamp(seen, 1.0, 10.0);
      k.white_share = client.white_share > 0 ? std::clamp(client.white_share + random.normal(0, 0.05), 0.02, 0.98) : 0;
      k.porosity = client.porosity + random.normal(0, 0.2);
      Bowl bowl;
      bowl.cls = w.cls, bowl.bottle_percent = w.bottle_percent, bowl.minutes = w.minutes;
      bowl.ratio = w.cls == BowlClass::permanent ? 1 : 2;
      Random tube = stream(plan, kSwatch, 1000 * w.range + 100 * static_cast<int>(w.shade) + static_cast<int>(w.tone));
      Spectrum load{};
      if (w.cls != BowlClass::lightener) {
        load = shade_of(w.shade + (w.cls == BowlClass::demi ? 1.2 : 0.3), w.tone, range_hair, ladder, tube);
        Hair swatch;
        swatch.dye = load;
        bowl.swatch = range_hair.reflectance(swatch);
      }
      k.bowls = {bowl};

      const Shift shift{salon.dye * range.dye * own.dye * random.lognormal(1, differ.visit),
                        salon.rate * range.rate * own.rate * random.lognormal(1, differ.visit)};
      Hair pigmented = light.natural(ladder.lightness(w.level)), white;
      Condition of_pigmented{client.porosity, 0}, of_white{client.porosity, 0};
      const Dose dose = chemistry.dose(bowl, load, w.shade);
      const double warmth = chemistry.warmth(k.from_cm, k.to_cm);
      chemistry.treat(pigmented, of_pigmented, dose, warmth, shift);
      chemistry.treat(white, of_white, dose, warmth, shift);
      r.after = light.blend(pigmented, white, client.white_share);
      write_down(r, ladder.level(r.after.l), eyes, plan, random);
      all.push_back(std::move(r));
    }
  return all;
}

}  // namespace strandline::truth
