// Plain records → JSON, keys in the order of Fields. Absent optionals are left out.
#pragma once

#include "strandline/wire/decode.h"

namespace strandline::wire {

template <class T>
Json encode(const T& value);

template <class T>
void encode_members(const T& value, Json& out) {
  for_each_field<T>([&]<class F>(const F& f) {
    const auto& member = value.*(f.member);
    using M = std::remove_cvref_t<decltype(member)>;
    if constexpr (is_inlined<F>::value) {
      encode_members(member, out);
    } else if constexpr (is_optional<M>::value) {
      if (member) out[std::string(f.name)] = encode(*member);
    } else {
      out[std::string(f.name)] = encode(member);
    }
  });
}

template <class T>
Json encode(const T& value) {
  if constexpr (Special<T>::exists) {
    return Special<T>::encode(value);
  } else if constexpr (std::is_arithmetic_v<T> || std::is_same_v<T, std::string>) {
    return value;
  } else if constexpr (std::is_same_v<T, Params>) {
    Json out = Json::object();
    for (const auto& [key, text] : value) out[key] = text;
    return out;
  } else if constexpr (std::is_same_v<T, Reading>) {
    return {{"value", value.value}, {"sd", value.sd}};
  } else if constexpr (is_vector<T>::value || is_array<T>::value) {
    Json out = Json::array();
    for (const auto& item : value) out.push_back(encode(item));
    return out;
  } else if constexpr (Worded<T>) {
    return std::string(word_of(value));
  } else {
    static_assert(Record<T>, "no Fields for this type");
    Json out = Json::object();
    encode_members(value, out);
    return out;
  }
}

// An answer of a verb, with the schema it follows.
template <class T>
Json with_schema(const T& answer) {
  Json out{{"schema", "strandline." + std::string(Fields<T>::verb) + "/1"}};
  encode_members(answer, out);
  return out;
}

}  // namespace strandline::wire
