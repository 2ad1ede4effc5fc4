#include "figures.h"

#include <cmath>
#include <limits>
#include <type_traits>

namespace strandline::salon {

Result<Figures> Figures::read(const wire::Json& json) {
  Figures out;
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

template <class Number>
void Figures::take_within(const char* key, Number& into, Number least, Number most) {
  const auto found = values_.find(key);
  if (found == values_.end()) return problems_.push_back({"missing_key", "", {{"key", key}}});
  const double value = found->second;
  if (!(value >= least && value <= most) || (std::is_integral_v<Number> && value != std::floor(value))) {
    const auto print = [](auto number) { return wire::print(wire::Json(number)); };
    return problems_.push_back({"out_of_range",
                                std::string("/") + key,
                                {{"value", print(value)}, {"min", print(least)}, {"max", print(most)}}});
  }
  into = static_cast<Number>(value);
}

void Figures::take(const char* key, int& into, int least, int most) { take_within(key, into, least, most); }
void Figures::take(const char* key, double& into, double least, double most) { take_within(key, into, least, most); }

}  // namespace strandline::salon
