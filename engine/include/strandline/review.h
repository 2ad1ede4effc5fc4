// review: the colourist's own bowls beside the best that this shelf can make; what each part does; what a wrong reading
// would do. convert: the same result from another range. substitute: the bowl without a tube that is empty.
#pragma once

#include "strandline/visit.h"

namespace strandline {

// The looks of a zone after one bowl or another.
struct Looks {
  Lab lab{};  // D65/10°, nominal
  Named named;
  double contrast_levels = 0;
};

struct BowlReview {
  std::string label;
  double objective = 0;  // expected loss in levels over its zones, habits and money included
  double best = 0;       // of the certified best for the same zones; 0 and no recipe where no bowl may serve them
  Recipe best_recipe;
  bool fine = false;  // within `fine_within` (knowledge/loss) of the best, and no house rule broken
  Reasons broken;     // house rules and law that it breaks
  Reasons notes;      // "later_bowl_decides": what a later step puts on all its zones is judged, not this
  // The smallest change that makes it fine; absent where it is fine, or where only another bowl helps.
  std::optional<Bowl> change;
  Reasons changes;  // "change_strength", "change_minutes", "swap_shade", "add_shade", "drop_shade", "shift_shares"
  double change_objective = 0;
  std::vector<PartEffect> effects;
};

// What the bowls give where one reading is wrong by `by`.
struct Reaction {
  std::string zone, reading;  // "level" (levels), "white" (share), "porosity" (steps)
  double by = 0;
  Looks looks;
  double level_moves = 0;  // against the reading as it is
};

struct Review {
  std::vector<BowlReview> bowls;
  std::vector<Reaction> reactions;
};

// Requires check(visit) empty. Problems: no bowls, or no wish to judge them by.
Result<Review> review(const Visit& visit, const FormulateOptions& options = {});

struct ZoneDifference {
  std::string zone;
  Looks before, after;
  double delta_e_2000 = 0;
};

// One own bowl made otherwise.
struct Remade {
  std::string label;  // of the own bowl
  PlannedBowl bowl;   // what to mix instead; no parts where nothing may be mixed
  Reasons changes;    // of a substitution: what was changed
  std::vector<ZoneDifference> zones;
  Problems notes;  // "other_maker_skin_test", "nothing_may_replace"
};

// Every own bowl's result, as near as another range of the shelf comes, in the grams of the own bowl where law and
// stock allow. Problems: no bowls, unknown range, a range that gives no colour.
Result<std::vector<Remade>> convert(const Visit& visit, const std::string& range, const FormulateOptions& options = {});

// A product that ran out, perhaps while a bowl was being weighed.
struct EmptyTube {
  std::string product;
  double weighed_g = 0;  // of it, in the bowl already, ≥ 0
};

// Every own bowl that holds this product, without it: the smallest change within the maker that is fine, else the best
// bowl of the maker, else of another. A bowl with some of it weighed is finished with one shade of its range where that
// is fine ("finish_with"), else made anew ("weighed_is_lost"). In the grams of the own bowl, where law and stock allow.
// Problems: no bowls, unknown product, more weighed than every bowl takes.
Result<std::vector<Remade>> substitute(const Visit& visit, const EmptyTube& tube, const FormulateOptions& options = {});

}  // namespace strandline
