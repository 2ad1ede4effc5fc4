#include "strandline/wire/answer_fields.h"

namespace strandline::wire {

namespace {

template <class T>
Json with_schema(const T& answer, std::string_view verb) {
  Json out{{"schema", "strandline." + std::string(verb) + "/1"}};
  encode_members(answer, out);
  return out;
}

}  // namespace

Json answer_json(const AssessAnswer& a) { return with_schema(a, Fields<AssessAnswer>::verb); }
Json answer_json(const AimAnswer& a) { return with_schema(a, Fields<AimAnswer>::verb); }
Json answer_json(const PredictAnswer& a) { return with_schema(a, Fields<PredictAnswer>::verb); }
Json answer_json(const FormulateAnswer& a) { return with_schema(a, Fields<FormulateAnswer>::verb); }
Json answer_json(const PlanAnswer& a) { return with_schema(a, Fields<PlanAnswer>::verb); }
Json answer_json(const ReachAnswer& a) { return with_schema(a, Fields<ReachAnswer>::verb); }
Json answer_json(const LevelsAnswer& a) { return with_schema(a, Fields<LevelsAnswer>::verb); }
Json answer_json(const ShelfAnswer& a) { return with_schema(a, Fields<ShelfAnswer>::verb); }

Json answer_json(const Timeline& timeline) {
  return {{"schema", "strandline.schedule/1"}, {"timeline", encode(timeline)}};
}

}  // namespace strandline::wire
