// From a bowl to what a fibre feels: dye offered, peroxide, time, heat (M6–M8).
#pragma once

#include <string>
#include <vector>

#include "strandline/fibre.h"
#include "strandline/formula.h"
#include "strandline/result.h"
#include "strandline/shelf.h"

namespace strandline {

// The part of a bowl's load that comes from one shade known by its name alone.
struct NamedLoad {
  std::string product;
  Spectrum load{};
};

// What a bowl is, whoever's hair it meets.
struct BowlChemistry {
  ProductClass cls = ProductClass::permanent;
  double peroxide_percent = 0;  // in the bowl, Σ C·m / Σ m
  double minutes = 0;
  double alkaline_lift = 1;
  double reference_minutes = 35;
  bool damp_hair = false;
  Spectrum load{};  // M8, after the capacity of the fibre
  std::vector<NamedLoad> by_name;
};

// The load one shade alone offers at its range's reference process, in optical depth on white hair, undone from the
// fibre's capacity so that offers add (M8). By what it is known: its swatch beyond white hair; its swatch beyond the
// stated hair after the same process without dye, over the part of a load that shows there; or the load its name
// promises. What learn() found is taken as it is. Zero for what has no colour.
Spectrum offered(const Product& product, const Range& range);
// Works out once what every shade of the shelf offers. Requires check(shelf) empty.
void learn(Shelf& shelf);
// What a fibre takes of an offer whose mean over the bands is `total` ≥ 0: 1 of little, less of more.
double capacity_left(double total);
// Capacity limit by a scalar of the total, so that a mix stays a ray: offers add, then saturate. `offer` ≥ 0.
Spectrum saturated(const Spectrum& offer);
// A load as fibres take it, thinned to this share of its colour part, 0…1: capacity undone, thinned, put back.
Spectrum thinned(const Spectrum& load, double share);
// Dilution of the colour part at this ratio relative to the range's reference ratio.
double dilution(const Range& range, double ratio);

// Problems: unknown product or range, no grams, a part that is not of this range's family.
Result<BowlChemistry> chemistry(const Formula& formula, const Shelf& shelf);

// What a fibre between `from_cm` and `to_cm` of the hair feels.
Treatment treatment(const BowlChemistry& bowl, double from_cm, double to_cm, const Constants& constants);

}  // namespace strandline
