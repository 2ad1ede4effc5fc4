#include "whole_constants.h"

#include <cmath>
#include <limits>

namespace strandline::salon {

Result<WholeConstants> WholeConstants::read(const wire::Json& json) {
  WholeConstants out;
  const auto list = json.find("constants");
  if (list == json.end() || !list->is_array())
    return tl::unexpected(Problems{{"missing_key", "", {{"key", "constants"}}}});
  for (const wire::Json& one : *list) {
    if (!one.is_object() || !one.contains("key") || !one["key"].is_string()) continue;
    const auto value = one.find("value");
    out.values_[one["key"].get<std::string>()] =
        value != one.end() && value->is_number() ? value->get<double>() : std::numeric_limits<double>::quiet_NaN();
  }
  return out;
}

void WholeConstants::take(const char* key, int& into, int least, int most) {
  const auto found = values_.find(key);
  if (found == values_.end()) return problems_.push_back({"missing_key", "", {{"key", key}}});
  const double value = found->second;
  if (!(value >= least && value <= most) || value != std::floor(value)) {
    return problems_.push_back(
        {"out_of_range",
         std::string("/") + key,
         {{"value", wire::print(wire::Json(value))}, {"min", std::to_string(least)}, {"max", std::to_string(most)}}});
  }
  into = static_cast<int>(value);
}

}  // namespace strandline::salon
