// What was agreed to be kept, tested, looked at and finished on the head, as facts of the visit.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/colour.h"
#include "strandline/wire/everyday.h"

namespace strandline::wire {

enum class TestOf { skin, metal, strand };

// A test as it was made: of the skin by the maker's method, of hair for metal, of a strand for the result.
struct TestMade {
  TestOf of = TestOf::skin;
  std::string site;  // where: behind the ear, the zone a strand was taken from
  std::string method, product, maker, batch;
  std::optional<double> minutes;  // of exposure
  std::string seen;               // what showed, in words
  std::optional<double> level;    // of a strand
  std::optional<Lab> measured;
  std::string name;       // who made it
  std::string signed_by;  // the client
};

enum class Saw { end_point, not_yet, too_far, overlap, seepage, stain, uneven };

// A look at hair that develops, or at what went astray.
struct Checked {
  Saw saw = Saw::end_point;
  std::string zone;
  std::optional<double> level;
  std::optional<double> at_min;  // since hands went on
  std::string note;
};

// Lines of the house after the rinse, by their ids.
struct Finished {
  std::vector<std::string> done, left_out;
  std::string name;
};

enum class ConsentTo { health, photos, sharing };

// Each by itself; the newest counts, so that it is taken back by one that is not given.
struct Consented {
  ConsentTo to = ConsentTo::health;
  bool given = false;
  std::string words;  // that stood on the glass, or were said
  std::string name;   // whose it is: the client, or who answers for a child
};

}  // namespace strandline::wire
