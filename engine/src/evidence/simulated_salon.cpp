#include "evidence/simulated_salon.h"

#include <algorithm>
#include <cmath>

#include "evidence/told.h"
#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/existing.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

using truth::BowlClass;
using truth::Random;
using truth::Record;
using truth::SalonPlan;

constexpr double kMoreShare = 0.08, kMore = 2.5;  // people far from the rest, and how many times further
constexpr double kDrift = 0.04, kSuits = 0.1;     // a visit; a range on one person

truth::Nature times(const truth::Nature& a, const truth::Nature& b) {
  return {a.dye * b.dye, a.rate * b.rate, a.eye + b.eye};
}

truth::Nature person_at(SalonWorld world, const SalonPlan& plan, int person, int visit, int range) {
  truth::Nature n = nature_of_person(plan, {}, person);
  if (world != SalonWorld::restless) return n;
  Random random(plan.seed * 1000 + 7, person);
  if (random.uniform(0, 1) < kMoreShare) n.dye = std::pow(n.dye, kMore), n.rate = std::pow(n.rate, kMore);
  for (int v = 0; v < visit; ++v) n.dye *= random.lognormal(1, kDrift), n.rate *= random.lognormal(1, kDrift);
  Random suits(plan.seed * 1000 + 8, person * truth::kRanges + range);
  n.dye *= suits.lognormal(1, kSuits);
  return n;
}

// A swatch of the range: natural colour of this level on white hair, with a bell of the tone.
Spectrum swatch_of(double level, truth::Word tone) {
  Fibre f = white_fibre();
  const Lab wanted = colour_of(std::min(level, 9.5), static_cast<Tone>(tone));
  f = dyed_to(f, wanted, pigments(Constants{}));
  return reflectance(optical_depth(f, pigments(Constants{})));
}

}  // namespace

std::vector<Record> simulate_salon(SalonWorld world, const SalonPlan& plan) {
  if (world == SalonWorld::outside) return truth::simulate_salon(plan);
  const truth::Differ differ;
  const truth::Nature salon = nature_of_salon(plan, differ);
  const Draws heads = draw(head_of({}), 256);
  std::vector<Record> all;
  for (int visit = 0; visit < plan.visits; ++visit)
    for (int person = 0; person < plan.people; ++person) {
      Random random(plan.seed * 1000 + 9, visit * plan.people + person);
      const truth::Client client(plan, person);
      const truth::Client::Wish w = client.next(random);
      const truth::Nature eyes = nature_of_colourist(plan, differ, w.colourist);
      Record r;
      r.person = person, r.colourist = w.colourist, r.range = w.range, r.visit = visit;
      truth::Known& k = r.known;
      k.from_cm = 0, k.to_cm = 2;
      k.level = k.natural_level = std::clamp(w.level, 1.0, 10.0);
      k.white_share = client.white_share, k.porosity = client.porosity;
      truth::Bowl bowl;
      bowl.cls = w.cls, bowl.bottle_percent = w.bottle_percent, bowl.minutes = w.minutes;
      bowl.ratio = w.cls == BowlClass::permanent ? 1 : 2;
      if (w.cls != BowlClass::lightener)
        bowl.swatch = swatch_of(w.shade + (w.cls == BowlClass::demi ? 1.2 : 0.3), w.tone);
      k.bowls = {bowl};

      const truth::Nature all_of =
          times(times(salon, nature_of_range(plan, differ, w.range)), person_at(world, plan, person, visit, w.range));
      Draws truth = draw(head_of(k), 1, 0);
      Constants& c = truth.nominal = heads.constants[static_cast<size_t>(person) % heads.constants.size()];
      c.head_lift *= all_of.rate * random.lognormal(1, differ.visit);
      c.shade_strength *= all_of.dye * random.lognormal(1, differ.visit);
      ZoneDraws& zone = truth.zones[0];
      if (const auto mixed = bowl_of(bowl)) apply(*mixed, zone, truth);
      r.after = view(zone.nominal, zone.kinds, c).lab;
      write_down(r, level_of_lightness(r.after.l), eyes, plan, random);
      // What is known is read, with the eye of whoever reads.
      k.level = k.natural_level = std::clamp(w.level + eyes.eye + random.normal(0, 0.22), 1.0, 10.0);
      k.white_share = client.white_share > 0 ? std::clamp(client.white_share + random.normal(0, 0.05), 0.02, 0.98) : 0;
      k.porosity = client.porosity + random.normal(0, 0.2);
      all.push_back(std::move(r));
    }
  return all;
}

}  // namespace strandline
