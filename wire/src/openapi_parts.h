// Pieces of an OpenAPI description for answers that the server writes by itself.
#pragma once

#include <initializer_list>
#include <string>
#include <utility>

#include "strandline/wire/json.h"

namespace strandline::wire::parts {

inline Json typed(const char* type) { return {{"type", type}}; }
inline Json ref(const std::string& name) { return {{"$ref", "#/components/schemas/" + name}}; }
inline Json list_of(Json items) { return {{"type", "array"}, {"items", std::move(items)}}; }

using Keys = std::initializer_list<std::pair<const char*, Json>>;
inline Json object(const Keys& always, const Keys& maybe = {}) {
  Json out{{"type", "object"}, {"properties", Json::object()}, {"required", Json::array()}};
  for (const auto& [key, schema] : always) out["properties"][key] = schema, out["required"].push_back(key);
  for (const auto& [key, schema] : maybe) out["properties"][key] = schema;
  return out;
}

inline Json media(Json schema) {
  Json out;
  out["application/json"]["schema"] = std::move(schema);
  return out;
}

inline Json operation(const char* id, const char* answer, const char* status = "200") {
  Json out{{"operationId", id}};
  out["responses"][status] = {{"description", "the answer"}, {"content", media(ref(answer))}};
  out["responses"]["default"] = {{"description", "problems"}, {"content", media(ref("Problems"))}};
  return out;
}

inline Json texts(std::initializer_list<const char*> needed, std::initializer_list<const char*> maybe = {}) {
  Json out = object({});
  for (const char* key : needed) out["properties"][key] = typed("string"), out["required"].push_back(key);
  for (const char* key : maybe) out["properties"][key] = typed("string");
  return out;
}

inline Json posting(Json op, Json body) {
  op["requestBody"] = {{"required", true}, {"content", media(std::move(body))}};
  return op;
}

}  // namespace strandline::wire::parts
