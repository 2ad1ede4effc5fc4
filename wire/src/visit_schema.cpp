#include "strandline/wire/schema.h"
#include "strandline/wire/visit_fields.h"

namespace strandline::wire {

Json visit_schema() {
  SchemaPrinter printer("#/$defs/");
  const Json root = printer.type<VisitDocument>();
  Json definitions = printer.definitions();
  definitions["Visit"]["properties"]["schema"] = {{"const", std::string(kVisitSchema)}};
  Json list{{"required", {"populations"}}}, in_short{{"required", {"level"}}}, white{{"required", {"white_percent"}}};
  definitions["Span"]["anyOf"] = {std::move(list), std::move(in_short), std::move(white)};
  return {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
          {"$id", "strandline.visit/1"},
          {"title", "Strandline visit document"},
          {"source", "printed from the codec by: strandline schema"},
          {"$ref", root["$ref"]},
          {"$defs", std::move(definitions)}};
}

}  // namespace strandline::wire
