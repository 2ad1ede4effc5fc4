#include "body.h"

#include <algorithm>

namespace strandline::server {

Result<Texts> texts_of(const httplib::Request& request, std::initializer_list<std::string_view> needed,
                       std::initializer_list<std::string_view> optional) {
  const auto json = wire::parse(request.body);
  if (!json) return tl::unexpected(json.error());
  if (!json->is_object())
    return tl::unexpected(Problems{{"wrong_type", "", {{"expected", "object"}, {"found", "other"}}}});
  Texts out;
  std::string known;
  for (const auto& list : {needed, optional})
    for (const std::string_view key : list) known.append(known.empty() ? "" : ", ").append(key);
  for (const auto& [key, value] : json->items()) {
    const auto in = [&](const auto& list) { return std::find(list.begin(), list.end(), key) != list.end(); };
    if (!in(needed) && !in(optional))
      return tl::unexpected(Problems{{"unknown_key", wire::pointer("", key), {{"key", key}, {"known", known}}}});
    if (!value.is_string())
      return tl::unexpected(
          Problems{{"wrong_type", wire::pointer("", key), {{"expected", "text"}, {"found", "other"}}}});
    out[key] = value.get<std::string>();
  }
  for (const std::string_view key : needed) {
    if (!out.contains(std::string(key)))
      return tl::unexpected(Problems{{"missing_key", "", {{"key", std::string(key)}}}});
  }
  return out;
}

}  // namespace strandline::server
