// A simulated salon: the same people come again, to the same hands, with the same ranges; what was read, what was
// mixed, what the hair became and what was written down of it.
//
// Three worlds: two by the engine's own equations (simulated_salon.cpp) and one by equations of its own (here).
#pragma once

#include <optional>

#include "evidence/truth.h"
#include "evidence/truth_random.h"

namespace strandline::truth {

inline constexpr int kColourists = 4, kRanges = 4;  // ranges: two permanent, a demi, a lightener

// What belongs to one colourist, range, person or the salon and stays: how much more dye it leaves, how much faster it
// lightens, and by how many levels an eye reads too light.
struct Nature {
  double dye = 1, rate = 1, eye = 0;
};

struct SalonPlan {
  std::uint64_t seed = 1;
  int people = 200, visits = 6;
  double wrong_share = 0;  // of the records: something was written down that is not what happened
};

// How far those of one kind differ (standard deviations of the logarithm; of levels for the eye).
struct Differ {
  double salon = 0.08, range = 0.18, person_dye = 0.15, person_rate = 0.25, eye = 0.25, visit = 0.05;
};

struct Record {
  int person = 0, colourist = 0, range = 0, visit = 0;
  Known known;                  // one bowl
  Lab after{};                  // what the hair became, D65/10°, all fibres seen together
  double judged = 5;            // its level by eye, to half a level
  std::optional<Lab> measured;  // by an instrument
  bool wrong = false;           // `judged` and `measured` are not of this hair
};

// What is asked for and read of one person, visit after visit.
class Client {
 public:
  Client(const SalonPlan& plan, int person);
  // The next visit: hair as it is (level truly), and the bowl, its swatch left open.
  struct Wish {
    double level = 5, shade = 6;
    Word tone = Word::natural;
    BowlClass cls = BowlClass::permanent;
    int range = 0, colourist = 0;
    double bottle_percent = 6, minutes = 35;
  };
  Wish next(Random& random) const;

  double natural_level, white_share, porosity;

 private:
  int colourist_, range_;
};

// The parts of the salon, from its seed alone.
Nature nature_of_salon(const SalonPlan& plan, const Differ& differ);
Nature nature_of_range(const SalonPlan& plan, const Differ& differ, int range);
Nature nature_of_person(const SalonPlan& plan, const Differ& differ, int person);
Nature nature_of_colourist(const SalonPlan& plan, const Differ& differ, int colourist);

// What is written down of hair of this level and colour: by the eye, now and then by an instrument, now and then wrong.
void write_down(Record& record, double level, const Nature& colourist, const SalonPlan& plan, Random& random);

// By equations of its own, in the order in which people come: everybody once, then everybody again.
std::vector<Record> simulate_salon(const SalonPlan& plan);

}  // namespace strandline::truth
