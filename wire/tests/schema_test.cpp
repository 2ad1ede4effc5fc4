#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <set>

#include "strandline/wire/document.h"
#include "strandline/wire/openapi.h"

namespace strandline::wire {
namespace {

std::string read(const std::string& file) {
  std::ifstream in(STRANDLINE_SOURCE_DIR "/" + file);
  return {std::istreambuf_iterator<char>(in), {}};
}

void collect_references(const Json& value, std::set<std::string>& out) {
  if (value.is_object() && value.contains("$ref")) out.insert(value["$ref"].get<std::string>());
  if (value.is_structured()) {
    for (const Json& item : value) collect_references(item, out);
  }
}

// Regenerate with: ./strandline schema > knowledge/schema/visit.schema.json
TEST(VisitSchema, IsTheOnePublished) {
  std::string printed = print(visit_schema(), true);
  printed += '\n';
  EXPECT_EQ(read("knowledge/schema/visit.schema.json"), printed);
}

TEST(VisitSchema, EveryReferenceIsDefined) {
  const Json schema = visit_schema();
  std::set<std::string> references;
  collect_references(schema, references);
  EXPECT_GT(references.size(), 20u);
  for (const std::string& r : references) EXPECT_TRUE(schema.contains(Json::json_pointer(r.substr(1)))) << r;
}

TEST(OpenApi, EveryReferenceIsDefined) {
  const Json api = openapi("0");
  std::set<std::string> references;
  collect_references(api, references);
  for (const std::string& r : references) EXPECT_TRUE(api.contains(Json::json_pointer(r.substr(1)))) << r;
  for (const char* verb : {"what-if", "fade", "grow", "reach"})
    EXPECT_TRUE(api["paths"].contains(std::string("/api/v1/") + verb)) << verb;
  EXPECT_EQ(api["components"]["schemas"]["ZoneView"]["properties"]["doubt"]["type"], "array");
}

}  // namespace
}  // namespace strandline::wire
