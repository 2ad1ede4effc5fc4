#include "assess/strands.h"

#include <algorithm>

#include "predict/steps.h"
#include "predict/view.h"
#include "strandline/scenario.h"
#include "strandline/treatment.h"

namespace strandline {
namespace {

constexpr double kSlowest = 0.25, kFastest = 4;

// The level that the strand comes to at this speed.
double reached(ZoneDraws strand, double speed, const BowlChemistry& bowl, const Draws& draws) {
  strand.speed = speed;
  apply(bowl, strand, draws);
  return shown_level(strand.nominal, strand.kinds, draws.nominal);
}

}  // namespace

Head known_by_strands(Head head, const Shelf& shelf) {
  const Draws draws = draw(head, 1);
  size_t index = 0;
  for (Area& area : head.areas)
    for (Span& span : area.spans) {
      const ZoneDraws& zone = draws.zones[index++];
      if (span.strand_known) continue;  // told on the hair as it was read
      const Range* range = span.strand ? find_range(shelf, span.strand->what) : nullptr;
      if (!range || range->cls != ProductClass::lightener || !span.strand->level || span.strand->minutes <= 0) continue;
      const ReferenceProcess usual = reference(*range);
      BowlChemistry bowl;
      bowl.cls = range->cls;
      bowl.peroxide_percent = usual.developer_percent * usual.ratio / (1 + usual.ratio);
      bowl.minutes = span.strand->minutes;
      bowl.alkaline_lift = alkaline_lift(*range);
      bowl.reference_minutes = usual.minutes;
      double slow = kSlowest, fast = kFastest;
      constexpr int kHalvings = 30;
      for (int i = 0; i < kHalvings; ++i) {
        const double middle = (slow + fast) / 2;
        (reached(zone, middle, bowl, draws) < *span.strand->level ? slow : fast) = middle;
      }
      span.strand_speed = (slow + fast) / 2;
      span.strand_known = true;
    }
  return head;
}

}  // namespace strandline
