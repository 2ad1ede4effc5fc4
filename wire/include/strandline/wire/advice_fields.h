// Keys of review, convert and substitute.
#pragma once

#include "strandline/wire/advice.h"
#include "strandline/wire/answer_fields.h"

namespace strandline::wire {

template <>
struct Fields<LooksView> {
  static constexpr std::string_view name = "Looks";
  using V = LooksView;
  static constexpr auto list =
      std::make_tuple(field("lab", &V::lab, always), field("srgb", &V::srgb, always), field("level", &V::level, always),
                      field("tone", &V::tone, always), field("warmth", &V::warmth, always),
                      field("contrast_levels", &V::contrast_levels, always));
};

template <>
struct Fields<BowlReviewView> {
  static constexpr std::string_view name = "BowlReview";
  using V = BowlReviewView;
  static constexpr auto list = std::make_tuple(
      field("label", &V::label, always), field("objective", &V::objective, always), field("best", &V::best, always),
      field("best_recipe", &V::best_recipe, always), field("fine", &V::fine, always),
      field("broken", &V::broken, always), field("notes", &V::notes, always), field("change", &V::change),
      field("changes", &V::changes, always), field("change_objective", &V::change_objective),
      field("effects", &V::effects, always));
};

template <>
struct Fields<ReactionView> {
  static constexpr std::string_view name = "Reaction";
  using V = ReactionView;
  static constexpr auto list = std::make_tuple(field("zone", &V::zone, always), field("reading", &V::reading, always),
                                               field("by", &V::by, always), field("looks", &V::looks, always),
                                               field("level_moves", &V::level_moves, always));
};

template <>
struct Fields<ReviewAnswer> {
  static constexpr std::string_view name = "ReviewAnswer", verb = "review";
  using A = ReviewAnswer;
  static constexpr auto list =
      std::make_tuple(inlined(&A::rules), field("bowls", &A::bowls, always), field("reactions", &A::reactions, always));
};

template <>
struct Fields<ZoneDifferenceView> {
  static constexpr std::string_view name = "ZoneDifference";
  using V = ZoneDifferenceView;
  static constexpr auto list =
      std::make_tuple(field("zone", &V::zone, always), field("before", &V::before, always),
                      field("after", &V::after, always), field("delta_e_2000", &V::delta_e_2000, always));
};

template <>
struct Fields<RemadeView> {
  static constexpr std::string_view name = "Remade";
  using V = RemadeView;
  static constexpr auto list =
      std::make_tuple(field("label", &V::label, always), field("bowl", &V::bowl), field("changes", &V::changes, always),
                      field("zones", &V::zones, always), field("notes", &V::notes, always));
};

template <>
struct Fields<RemadeAnswer> {
  static constexpr std::string_view name = "RemadeAnswer", verb = "remade";
  static constexpr auto list = std::make_tuple(field("bowls", &RemadeAnswer::bowls, always));
};

}  // namespace strandline::wire
