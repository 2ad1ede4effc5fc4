// JSON → plain records. Everything wrong is collected with its place; nothing throws, nothing is guessed.
//
// Codes: wrong_type {expected, found} · missing_key {key} · unknown_key {key, nearest} · unknown_word {word,
// words, nearest} · out_of_range {value, min, max} · too_long {max} · too_many {max} · bad_date {text} ·
// control_character · wrong_count {expected, found}.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "strandline/units.h"
#include "strandline/wire/fields.h"
#include "strandline/wire/json.h"

namespace strandline::wire {

inline constexpr std::size_t kProblemsMax = 100;

// Where the decoder stands, and where problems go. At most kProblemsMax are kept.
class At {
 public:
  At(Problems& problems, std::string path) : problems_(&problems), path_(std::move(path)) {}

  At key(std::string_view name) const { return {*problems_, pointer(path_, name)}; }
  At item(std::size_t index) const { return {*problems_, pointer(path_, index)}; }
  const std::string& path() const { return path_; }
  void problem(std::string code, std::map<std::string, std::string> params = {}) const {
    if (problems_->size() < kProblemsMax) problems_->push_back({std::move(code), path_, std::move(params)});
  }
  bool full() const { return problems_->size() >= kProblemsMax; }

 private:
  Problems* problems_;
  std::string path_;
};

// The shared parts, not generic.
void decode_number(const Json& in, double& out, const At& at, const Rules& rules);
void decode_integer(const Json& in, long long& out, const At& at, const Rules& rules);
void decode_text(const Json& in, std::string& out, const At& at, const Rules& rules);
void decode_flag(const Json& in, bool& out, const At& at);
void decode_reading(const Json& in, Reading& out, const At& at, const Rules& rules);
void wrong_type(const Json& in, const At& at, std::string_view expected);
void unknown_word(const std::string& found, const std::vector<std::string_view>& words, const At& at);
// A problem for each key of `in` that is not known.
void check_keys(const Json& in, const std::vector<std::string_view>& known, const At& at);
// The number as a person would write it, at most 12 digits.
std::string number_text(double value);

// A type with its own spelling in JSON specialises this.
template <class T>
struct Special {
  static constexpr bool exists = false;
};

// The parameters of a problem; told, never read.
using Params = std::map<std::string, std::string>;

template <class T>
void decode(const Json& in, T& out, const At& at, const Rules& rules = {});

template <class T>
struct is_optional : std::false_type {};
template <class T>
struct is_optional<std::optional<T>> : std::true_type {};
template <class T>
struct is_vector : std::false_type {};
template <class T>
struct is_vector<std::vector<T>> : std::true_type {};
template <class T>
struct is_array : std::false_type {};
template <class T, std::size_t N>
struct is_array<std::array<T, N>> : std::true_type {};

template <class T>
void known_keys(std::vector<std::string_view>& out) {
  for_each_field<T>([&]<class F>(const F& f) {
    if constexpr (is_inlined<F>::value) {
      known_keys<std::remove_cvref_t<decltype(std::declval<T>().*(f.member))>>(out);
    } else {
      out.push_back(f.name);
    }
  });
}

template <class T>
void decode_members(const Json& in, T& out, const At& at) {
  for_each_field<T>([&]<class F>(const F& f) {
    if constexpr (is_inlined<F>::value) {
      decode_members(in, out.*(f.member), at);
    } else if (const auto found = in.find(std::string(f.name)); found != in.end()) {
      decode(*found, out.*(f.member), at.key(f.name), f.rules);
    } else if (f.rules.required) {
      at.problem("missing_key", {{"key", std::string(f.name)}});
    }
  });
}

template <class T>
void decode_record(const Json& in, T& out, const At& at) {
  if (!in.is_object()) return wrong_type(in, at, "object");
  std::vector<std::string_view> known;
  known_keys<T>(known);
  check_keys(in, known, at);
  decode_members(in, out, at);
}

template <class L>
void decode_list(const Json& in, L& out, const At& at, const Rules& rules) {
  if (!in.is_array()) return wrong_type(in, at, "list");
  if constexpr (is_array<L>::value) {
    if (in.size() != out.size()) {
      return at.problem("wrong_count",
                        {{"expected", std::to_string(out.size())}, {"found", std::to_string(in.size())}});
    }
  } else {
    if (in.size() > rules.max_items) return at.problem("too_many", {{"max", std::to_string(rules.max_items)}});
    out.resize(in.size());
  }
  for (std::size_t i = 0; i < in.size() && !at.full(); ++i) decode(in[i], out[i], at.item(i), rules);
}

template <class E>
void decode_word(const Json& in, E& out, const At& at) {
  if (!in.is_string()) return wrong_type(in, at, "text");
  const std::string& text = in.get_ref<const std::string&>();
  std::vector<std::string_view> words;
  for (const auto& [key, word] : Words<E>::list) {
    if (text == word) {
      out = key;
      return;
    }
    words.push_back(word);
  }
  unknown_word(text, words, at);
}

template <class T>
void decode(const Json& in, T& out, const At& at, const Rules& rules) {
  if constexpr (is_optional<T>::value) {
    if (in.is_null()) {
      out.reset();
    } else {
      decode(in, out.emplace(), at, rules);
    }
  } else if constexpr (Special<T>::exists) {
    Special<T>::decode(in, out, at, rules);
  } else if constexpr (std::is_same_v<T, bool>) {
    decode_flag(in, out, at);
  } else if constexpr (std::is_integral_v<T>) {
    long long wide = out;
    decode_integer(in, wide, at, rules);
    out = static_cast<T>(wide);
  } else if constexpr (std::is_floating_point_v<T>) {
    decode_number(in, out, at, rules);
  } else if constexpr (std::is_same_v<T, std::string>) {
    decode_text(in, out, at, rules);
  } else if constexpr (std::is_same_v<T, Reading>) {
    decode_reading(in, out, at, rules);
  } else if constexpr (is_vector<T>::value || is_array<T>::value) {
    decode_list(in, out, at, rules);
  } else if constexpr (Worded<T>) {
    decode_word(in, out, at);
  } else {
    static_assert(Record<T>, "no Fields for this type");
    decode_record(in, out, at);
  }
}

}  // namespace strandline::wire
