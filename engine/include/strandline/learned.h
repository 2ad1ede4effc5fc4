// learn: what results teach of a salon, its colourists, its ranges and one person (M17). A model is a value; it is made
// anew from all results, so that what is taken out of them is forgotten.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "strandline/formula.h"
#include "strandline/head.h"
#include "strandline/shelf.h"

namespace strandline::learned {

enum class Whose { salon, colourist, range, person };
enum class What {
  lift,     // ln of how much faster it lightens
  depth,    // ln of how much more dye it leaves
  warmth,   // relative change of a dye's depth at 400 nm against at 550 nm
  natural,  // a person's own level, from every reading of hair as it grew
  white,    // the share of white beside it, likewise
  eye       // levels that a colourist reads too light
};

// One number that results teach, as it is known by now.
struct Factor {
  Whose whose = Whose::salon;
  std::string id;  // of the colourist, range or person
  What what = What::lift;
  double mean = 0, sd = 0;
  double prior_sd = 0;  // before any result; the mean was 0, of a natural level nothing that is told here
};

// On one range: all that concerns the salon, the range and the person together.
struct Effect {
  double lift = 0, depth = 0, warmth = 0;
};

struct Who {
  std::string person, colourist;  // empty = nobody's
};

struct Seen {
  std::string zone;             // "area/span"
  double level = 5;             // by eye
  std::optional<Lab> measured;  // D65/10°, sphere; counts instead of the eye
  bool as_predicted = false;    // the eye told no difference from `level`, which was predicted
};

// One visit and what came of it.
struct Outcome {
  std::string id;  // of the result
  Who who;
  Head head;                // as it was read before
  std::vector<Step> steps;  // what was mixed and where it lay
  Shelf shelf;              // what it was mixed from
  std::vector<Seen> zones;  // those that no step touched teach nothing
};

// What was expected of a zone, and what was seen.
struct Said {
  std::string outcome, zone;
  std::vector<std::string> ranges;  // that touched it, by range_key()
  bool measured = false;
  double untaught = 0;       // level, before any result
  double expected = 0;       // level, by the results before this one
  double low = 0, high = 0;  // of the level it truly has: nine times in ten
  double seen = 0;           // level
  double surprise = 0;       // how far off, in standard deviations of what was expected
  bool set_aside = false;    // too far off to be learned from
};

// The joint distribution of everything that results teach. What belongs to people is kept given what is shared, so that
// however many come a result costs the same.
class Model {
 public:
  Model();
  Model(const Model& other);
  Model(Model&& other) noexcept;
  Model& operator=(Model other) noexcept;
  ~Model();

  // Gauss–Newton on the joint mean and covariance. Problems: those of reading the steps (unknown product, range, zone).
  // A zone that lies further off than the gate is told and not learned from.
  Result<std::vector<Said>> take(const Outcome& outcome);
  // What take() would say of the zones that the steps touch, `seen` left out.
  Result<std::vector<Said>> expected(const Outcome& outcome) const;

  // Everything known of the salon, its colourists and its ranges; and of one person.
  std::vector<Factor> factors() const;
  std::vector<Factor> factors(const std::string& person) const;
  // What to reckon with when this range, by its range_key(), is used on this person ("" = nobody known).
  Effect effect(const std::string& range, const std::string& person) const;
  // Results of a range that were learned from.
  int results(const std::string& range) const;
  // The share of them that lay within what was stated, nine times in ten expected; 0 where there are none.
  double within(const std::string& range) const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// By what a range is known here: its shelf, whatever version of it, and its id.
std::string range_key(const Shelf& shelf, const std::string& range);

// The shelf as it behaves in this salon on this person: what its shades offer and how its ranges lighten. Demi colour
// keeps its side of what counts as acid. Requires what learn(Shelf&) did.
Shelf as_known(Shelf shelf, const Model& model, const std::string& person);

// What was learned, in words to be, largest first: {learned_deeper, learned_lighter, learned_lifts_more,
// learned_lifts_less, learned_warmer, learned_cooler, learned_reads_light, learned_reads_dark} with {whose, id,
// levels}. Only what is a fifth of a level or more and surer than half of its size.
Problems in_words(const std::vector<Factor>& factors);

}  // namespace strandline::learned
