// JSON text in and out, guarded: what strangers send is refused with its place, never half read.
#pragma once

#include <cstddef>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "strandline/result.h"

// Takes apart by plain recursion. The library's own takes memory for it, in a destructor: with none left the program
// would end. No value here is deeper than what parse() lets in.
template <>
inline void nlohmann::ordered_json::json_value::destroy(nlohmann::detail::value_t type) {
  using Type = nlohmann::detail::value_t;
  if (type == Type::object) delete object;
  if (type == Type::array) delete array;
  if (type == Type::string) delete string;
  if (type == Type::binary) delete binary;
}

namespace strandline::wire {

// Keys keep the order in which they are written.
using Json = nlohmann::ordered_json;

struct TextLimits {
  std::size_t bytes = 4u << 20;
  int depth = 64;
};

// The value of a JSON text (RFC 8259). Problems, one at most, with /line/column kept in the parameters:
// document_too_large, invalid_utf8, too_deep, duplicate_key, not_a_number (NaN, Infinity, or beyond
// ±1.8e308), not_json.
Result<Json> parse(std::string_view text, const TextLimits& limits = {});

// One line, or two spaces per level when `pretty`. Every string in `value` must be UTF-8.
std::string print(const Json& value, bool pretty = false);

// Offset of the first byte that is not UTF-8 (Unicode 3.9 D92: no surrogates, no overlong forms), or npos.
std::size_t find_invalid_utf8(std::string_view text);

// JSON pointers (RFC 6901).
std::string pointer(const std::string& parent, std::string_view key);
std::string pointer(const std::string& parent, std::size_t index);

// {"problems": [{code, path, params}]}: what every door answers when a document is refused.
Json problems_json(const Problems& problems);

}  // namespace strandline::wire
