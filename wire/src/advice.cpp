#include "strandline/wire/advice.h"

#include "strandline/wire/advice_fields.h"

namespace strandline::wire {
namespace {

LooksView view(const Looks& l) {
  return {l.lab, rgb(l.lab), l.named.level, l.named.tone, l.named.warmth, l.contrast_levels};
}

BowlReviewView view(const BowlReview& b) {
  BowlReviewView out{b.label,  b.objective, b.best, b.best_recipe, b.fine, b.broken, b.notes,
                     b.change, b.changes,   {},     b.effects};
  if (b.change) out.change_objective = b.change_objective;
  return out;
}

}  // namespace

ReviewAnswer view(const Review& review) {
  ReviewAnswer out;
  for (const BowlReview& b : review.bowls) out.bowls.push_back(view(b));
  for (const Reaction& r : review.reactions)
    out.reactions.push_back({r.zone, r.reading, r.by, view(r.looks), r.level_moves});
  return out;
}

RemadeAnswer view(const std::vector<Remade>& bowls, const Shelf& shelf) {
  RemadeAnswer out;
  for (const Remade& r : bowls) {
    RemadeView v{r.label, {}, r.changes, {}, r.notes};
    if (!r.bowl.bowl.formula.parts.empty()) v.bowl = view(r.bowl, shelf);
    for (const ZoneDifference& z : r.zones) v.zones.push_back({z.zone, view(z.before), view(z.after), z.delta_e_2000});
    out.bowls.push_back(std::move(v));
  }
  return out;
}

Json answer_json(const ReviewAnswer& a) { return with_schema(a); }
Json answer_json(const RemadeAnswer& a) { return with_schema(a); }

}  // namespace strandline::wire
