#include "strandline/wire/replan_fields.h"

namespace strandline::wire {

Json answer_json(const AssessAnswer& a) { return with_schema(a); }
Json answer_json(const AimAnswer& a) { return with_schema(a); }
Json answer_json(const PredictAnswer& a) { return with_schema(a); }
Json answer_json(const FormulateAnswer& a) { return with_schema(a); }
Json answer_json(const PlanAnswer& a) { return with_schema(a); }
Json answer_json(const ReachAnswer& a) { return with_schema(a); }
Json answer_json(const LevelsAnswer& a) { return with_schema(a); }
Json answer_json(const ShelfAnswer& a) { return with_schema(a); }
Json answer_json(const Replanned& a) { return with_schema(a); }

Json answer_json(const Timeline& timeline) {
  return {{"schema", "strandline.schedule/1"}, {"timeline", encode(timeline)}};
}

}  // namespace strandline::wire
