// What is said of the colourist's own bowls, as the doors answer it.
#pragma once

#include "strandline/review.h"
#include "strandline/wire/answer.h"

namespace strandline::wire {

struct LooksView {
  Lab lab{};
  Rgb srgb;  // daylight
  double level = 0;
  Tone tone = Tone::natural;
  double warmth = 0;
  double contrast_levels = 0;
};

struct BowlReviewView {
  std::string label;
  double objective = 0, best = 0;
  Recipe best_recipe;
  bool fine = false;
  Problems broken, notes;
  std::optional<Bowl> change;
  Problems changes;
  std::optional<double> change_objective;  // with `change`
  std::vector<PartEffect> effects;
};

struct ReactionView {
  std::string zone, reading;
  double by = 0;
  LooksView looks;
  double level_moves = 0;
};

struct ReviewAnswer {
  VerdictsView rules;
  std::vector<BowlReviewView> bowls;
  std::vector<ReactionView> reactions;
};

struct ZoneDifferenceView {
  std::string zone;
  LooksView before, after;
  double delta_e_2000 = 0;
};

struct RemadeView {
  std::string label;
  std::optional<BowlView> bowl;  // absent where nothing may be mixed
  Problems changes;
  std::vector<ZoneDifferenceView> zones;
  Problems notes;
};

// convert and substitute answer this.
struct RemadeAnswer {
  std::vector<RemadeView> bowls;
};

ReviewAnswer view(const Review& review);
RemadeAnswer view(const std::vector<Remade>& bowls, const Shelf& shelf);

Json answer_json(const ReviewAnswer& answer);
Json answer_json(const RemadeAnswer& answer);

}  // namespace strandline::wire
