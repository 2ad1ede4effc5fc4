#include "openapi_stock.h"

#include "strandline/wire/answer_fields.h"
#include "strandline/wire/report_fields.h"
#include "strandline/wire/stock_fields.h"

namespace strandline::wire {

namespace {

Json typed(const char* type) { return {{"type", type}}; }
Json ref(const std::string& name) { return {{"$ref", "#/components/schemas/" + name}}; }
Json list_of(Json items) { return {{"type", "array"}, {"items", std::move(items)}}; }

Json content(Json schema) {
  Json media;
  media["application/json"]["schema"] = std::move(schema);
  return media;
}

Json operation(const char* id, Json answer, const char* status, std::initializer_list<const char*> query) {
  Json out{{"operationId", id}};
  out["responses"][status] = {{"description", "the answer"}, {"content", content(std::move(answer))}};
  out["responses"]["default"] = {{"description", "problems"}, {"content", content(ref("Problems"))}};
  for (const char* name : query) {
    const char* type = std::string_view(name) == "limit" ? "integer" : "string";
    out["parameters"].push_back({{"name", name}, {"in", "query"}, {"required", false}, {"schema", typed(type)}});
  }
  return out;
}

Json answer(std::initializer_list<std::pair<const char*, Json>> keys) {
  Json out{{"type", "object"}, {"properties", {{"schema", typed("string")}}}, {"required", {"schema"}}};
  for (const auto& [key, schema] : keys) out["properties"][key] = schema, out["required"].push_back(key);
  return out;
}

Json body(Json schema) { return {{"required", true}, {"content", content(std::move(schema))}}; }

}  // namespace

void add_stock_paths(SchemaPrinter& p, Json& paths) {
  p.type<StockView>();
  Json& view = p.definitions()["StockView"];
  view["properties"]["schema"] = typed("string"), view["required"].push_back("schema");
  const Json wish = p.type<StockWish>();
  p.type<StockMove>();
  Json move = p.definitions()["StockMove"];
  for (const auto& [key, type] : std::initializer_list<std::pair<const char*, const char*>>{
           {"id", "string"}, {"at", "string"}, {"by", "string"}, {"cost", "number"}, {"undone", "boolean"}})
    move["properties"][key] = typed(type);
  for (const char* key : {"id", "at", "grams"}) move["required"].push_back(key);
  p.definitions()["StockMove"] = std::move(move);
  const Json moves = answer({{"moves", list_of(ref("StockMove"))}});
  Json page = moves;
  page["properties"]["next"] = typed("string");

  paths["/api/v1/stock"]["get"] = operation("stock", ref("StockView"), "200", {"shelf"});
  Json& all = paths["/api/v1/stock/moves"];
  all["get"] = operation("stockMoves", std::move(page), "200", {"shelf", "product", "visit", "cursor", "limit"});
  all["post"] = operation("moveStock", moves, "201", {"shelf", "entry"});
  p.type<StockReport>();
  Json& report = p.definitions()["StockReport"];
  report["properties"]["schema"] = typed("string"), report["required"].push_back("schema");
  paths["/api/v1/stock/report"]["get"] =
      operation("stockReport", ref("StockReport"), "200", {"shelf", "from", "until"});
  Json& table = paths["/api/v1/stock/table"];
  table["get"] = operation("stockTable", answer({{"csv", typed("string")}}), "200", {"shelf", "moves"});
  Json line = answer({{"line", typed("integer")}, {"text", typed("string")}, {"problems", list_of(p.type<Problem>())}});
  line["properties"].erase("schema"), line["required"].erase(0);
  line["properties"]["move"] = wish;
  p.definitions()["StockLine"] = std::move(line);
  table["post"] = operation("readStockTable", answer({{"lines", list_of(ref("StockLine"))}}), "200", {"shelf"});
  Json pasted{{"type", "object"}, {"required", {"text", "what"}}};
  pasted["properties"]["text"] = typed("string");
  pasted["properties"]["what"] = {{"type", "string"}, {"enum", {"receive", "count"}}};
  table["post"]["requestBody"] = body(std::move(pasted));
  const Json rules = p.type<PriceRules>();
  Json set = answer({});
  set["properties"]["rules"] = rules;
  paths["/api/v1/prices"]["get"] = operation("prices", set, "200", {});
  paths["/api/v1/prices"]["put"] = operation("setPrices", std::move(set), "200", {});
  paths["/api/v1/prices"]["put"]["requestBody"] = body(rules);
  const Json question = p.type<PriceAsked>();
  p.type<Price>();
  Json& price = p.definitions()["Price"];
  price["properties"]["schema"] = typed("string"), price["required"].push_back("schema");
  paths["/api/v1/price"]["post"] = operation("price", ref("Price"), "200", {});
  paths["/api/v1/price"]["post"]["requestBody"] = body(question);

  Json asked{{"type", "object"}, {"required", {"moves"}}};
  asked["properties"]["moves"] = list_of(wish);
  all["post"]["requestBody"] = body(std::move(asked));
}

}  // namespace strandline::wire
