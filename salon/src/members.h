// What stands at a key of a JSON object; nothing where it is missing or of another kind.
#pragma once

#include <optional>
#include <string>

#include "strandline/wire/json.h"

namespace strandline::salon {

inline std::string text_at(const wire::Json& object, const char* key) {
  const auto it = object.find(key);
  return it != object.end() && it->is_string() ? it->get<std::string>() : "";
}

inline std::optional<double> number_at(const wire::Json& object, const char* key) {
  const auto it = object.find(key);
  if (it == object.end() || !it->is_number()) return std::nullopt;
  return it->get<double>();
}

// An empty list where there is none.
inline const wire::Json& list_at(const wire::Json& object, const char* key) {
  static const wire::Json none = wire::Json::array();
  const auto it = object.find(key);
  return it != object.end() && it->is_array() ? *it : none;
}

}  // namespace strandline::salon
