// JSON Schema (2020-12) from the same Fields that the codec reads: what is printed is what is checked.
#pragma once

#include <cmath>

#include "strandline/wire/decode.h"

namespace strandline::wire {

// Collects one definition per named type. `prefix` is where definitions live ("#/$defs/",
// "#/components/schemas/").
class SchemaPrinter {
 public:
  explicit SchemaPrinter(std::string prefix) : prefix_(std::move(prefix)) {}

  template <class T>
  Json type(const Rules& rules = {}) {
    if constexpr (is_optional<T>::value) {
      return type<typename T::value_type>(rules);
    } else if constexpr (requires { typename Special<T>::Shape; }) {
      return reference<typename Special<T>::Shape>();
    } else if constexpr (requires { typename Special<T>::Written; }) {
      return named_or<T>();
    } else if constexpr (std::is_same_v<T, bool>) {
      return {{"type", "boolean"}};
    } else if constexpr (std::is_arithmetic_v<T>) {
      return bounded(std::is_integral_v<T> ? "integer" : "number", rules);
    } else if constexpr (std::is_same_v<T, std::string>) {
      Json out{{"type", "string"}, {"maxLength", rules.max_length}};
      if (rules.date) out["pattern"] = "^([0-9]{4}-[0-9]{2}-[0-9]{2})?$";
      return out;
    } else if constexpr (std::is_same_v<T, Params>) {
      return {{"type", "object"}, {"additionalProperties", {{"type", "string"}}}};
    } else if constexpr (std::is_same_v<T, Reading>) {
      return reading(rules);
    } else if constexpr (is_vector<T>::value) {
      return {{"type", "array"}, {"items", type<typename T::value_type>(rules)}, {"maxItems", rules.max_items}};
    } else if constexpr (is_array<T>::value) {
      return {{"type", "array"},
              {"items", type<typename T::value_type>(rules)},
              {"minItems", std::tuple_size_v<T>},
              {"maxItems", std::tuple_size_v<T>}};
    } else if constexpr (Worded<T>) {
      return words<T>();
    } else {
      return reference<T>();
    }
  }

  Json& definitions() { return definitions_; }

 private:
  static Json bounded(const char* name, const Rules& rules) {
    Json out{{"type", name}};
    if (std::isfinite(rules.min)) out["minimum"] = rules.min;
    if (std::isfinite(rules.max)) out["maximum"] = rules.max;
    return out;
  }

  static Json reading(const Rules& rules) {
    Json both{{"type", "object"},
              {"properties", {{"value", bounded("number", rules)}, {"sd", {{"type", "number"}, {"minimum", 0}}}}},
              {"required", {"value"}},
              {"additionalProperties", false}};
    return {{"anyOf", {bounded("number", rules), std::move(both)}}};
  }

  template <class T>
  Json named_or() {
    const std::string named(Special<T>::named);
    Json flag{{"type", "object"},
              {"properties", {{named, {{"const", true}}}}},
              {"required", {named}},
              {"additionalProperties", false}};
    return {{"anyOf", {{{"type", "string"}}, std::move(flag), type<typename Special<T>::Written>()}}};
  }

  template <class E>
  Json words() {
    const std::string name(Words<E>::name);
    if (!definitions_.contains(name)) {
      Json list = Json::array();
      for (const auto& [key, word] : Words<E>::list) list.push_back(std::string(word));
      definitions_[name] = {{"type", "string"}, {"enum", std::move(list)}};
    }
    return {{"$ref", prefix_ + name}};
  }

  template <class T>
  void members(Json& properties, Json& required) {
    for_each_field<T>([&]<class F>(const F& f) {
      using M = std::remove_cvref_t<decltype(std::declval<T>().*(f.member))>;
      if constexpr (is_inlined<F>::value) {
        members<M>(properties, required);
      } else {
        Json& property = properties[std::string(f.name)] = type<M>(f.rules);
        if (*f.rules.note) property["description"] = f.rules.note;
        if (f.rules.required) required.push_back(std::string(f.name));
      }
    });
  }

  template <class T>
  Json reference() {
    const std::string name(Fields<T>::name);
    if (!definitions_.contains(name)) {
      definitions_[name] = nullptr;  // holds the place while the members are printed
      Json properties = Json::object(), required = Json::array();
      members<T>(properties, required);
      Json out{{"type", "object"}, {"properties", std::move(properties)}};
      if (!required.empty()) out["required"] = std::move(required);
      out["additionalProperties"] = false;
      definitions_[name] = std::move(out);
    }
    return {{"$ref", prefix_ + name}};
  }

  std::string prefix_;
  Json definitions_ = Json::object();
};

}  // namespace strandline::wire
