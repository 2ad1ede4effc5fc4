// How a plain record looks in JSON: its fields by name, with what the codec and the schema need to know about
// each. Non-intrusive: a record stays a plain struct, its description is a specialisation beside the codec.
//
//   template <> struct Fields<Part> {
//     static constexpr std::string_view name = "Part";
//     static constexpr auto list = std::make_tuple(field("product", &Part::product, {.required = true}), …);
//   };
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

namespace strandline::wire {

// What a value must keep. Bounds are closed and in the unit of the field.
struct Rules {
  bool required = false;
  double min = -std::numeric_limits<double>::infinity();
  double max = std::numeric_limits<double>::infinity();
  double (*sd)() = nullptr;      // the doubt of a Reading given as a plain number; null = exact
  std::size_t max_length = 200;  // bytes of a text
  std::size_t max_items = 2000;  // of a list
  bool date = false;             // a text YYYY-MM-DD, or empty
  const char* note = "";         // for the schema: unit and meaning
};

template <class T, class M>
struct Field {
  std::string_view name;
  M T::* member;
  Rules rules;
};

template <class T, class M>
constexpr Field<T, M> field(std::string_view name, M T::* member, Rules rules = {}) {
  return {name, member, rules};
}

// A member whose own fields stand beside those of its owner.
template <class T, class M>
struct Inlined {
  M T::* member;
};

template <class T, class M>
constexpr Inlined<T, M> inlined(M T::* member) {
  return {member};
}

template <class T>
struct Fields;

// The words of an enumeration, in the order of the schema.
template <class E>
struct Words;

template <class T>
concept Record = requires { Fields<T>::list; };

template <class E>
concept Worded = std::is_enum_v<E> && requires { Words<E>::list; };

template <class T>
struct is_inlined : std::false_type {};
template <class T, class M>
struct is_inlined<Inlined<T, M>> : std::true_type {};

// Calls f(field, owner) for every field of a record, inlined ones too.
template <class T, class F>
constexpr void for_each_field(F&& f) {
  std::apply([&](const auto&... each) { (f(each), ...); }, Fields<T>::list);
}

template <class E>
constexpr std::string_view word_of(E value) {
  for (const auto& [key, word] : Words<E>::list) {
    if (key == value) return word;
  }
  return "";
}

}  // namespace strandline::wire
