#include "strandline/wire/decode.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>

namespace strandline::wire {

namespace {

constexpr std::size_t kQuotedMax = 60;

// Levenshtein distance, both short.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), 0u);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0]++;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t substituted = diagonal + (a[i - 1] != b[j - 1]);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, substituted});
    }
  }
  return row[b.size()];
}

// The known word that is closest, when it is close at all.
std::string nearest(std::string_view text, const std::vector<std::string_view>& words) {
  if (text.size() > kQuotedMax) return "";
  std::string_view best;
  std::size_t best_distance = 1 + text.size() / 2;
  for (std::string_view word : words) {
    if (const std::size_t d = distance(text, word); d < best_distance) best = word, best_distance = d;
  }
  return std::string(best);
}

std::string shortened(std::string_view text) {
  if (text.size() <= kQuotedMax) return std::string(text);
  std::size_t end = kQuotedMax;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return std::string(text.substr(0, end)) + "…";
}

std::string joined(const std::vector<std::string_view>& words) {
  std::string out;
  for (std::string_view word : words) out += (out.empty() ? "" : ", ") + std::string(word);
  return out;
}

std::string_view kind(const Json& value) {
  if (value.is_object()) return "object";
  if (value.is_array()) return "list";
  if (value.is_string()) return "text";
  if (value.is_boolean()) return "flag";
  if (value.is_number()) return "number";
  return "nothing";
}

bool check_range(double value, const At& at, const Rules& rules) {
  if (std::isfinite(value) && value >= rules.min && value <= rules.max) return true;
  at.problem("out_of_range",
             {{"value", number_text(value)}, {"min", number_text(rules.min)}, {"max", number_text(rules.max)}});
  return false;
}

// C0, DEL or C1: a name has no use for them, and a terminal would obey them. `text` is UTF-8.
bool has_control(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c < 0x20 || c == 0x7F) return true;
    if (c == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0) return true;
  }
  return false;
}

bool is_civil_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const auto number = [&](std::size_t from, std::size_t count) {
    int n = 0;
    for (char c : text.substr(from, count)) {
      if (c < '0' || c > '9') return -1;
      n = n * 10 + (c - '0');
    }
    return n;
  };
  const int y = number(0, 4), m = number(5, 2), d = number(8, 2);
  if (y < 1900 || m < 1 || m > 12 || d < 1) return false;
  const bool leap = (y % 4 == 0 && y % 100 != 0) || y % 400 == 0;
  const int days[] = {31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return d <= days[m - 1];
}

}  // namespace

std::string number_text(double value) {
  char buffer[40];
  std::snprintf(buffer, sizeof buffer, "%.12g", value);
  return buffer;
}

void wrong_type(const Json& in, const At& at, std::string_view expected) {
  at.problem("wrong_type", {{"expected", std::string(expected)}, {"found", std::string(kind(in))}});
}

void unknown_word(const std::string& found, const std::vector<std::string_view>& words, const At& at) {
  at.problem("unknown_word",
             {{"word", shortened(found)}, {"words", joined(words)}, {"nearest", nearest(found, words)}});
}

void check_keys(const Json& in, const std::vector<std::string_view>& known, const At& at) {
  for (const auto& [key, value] : in.items()) {
    if (at.full()) return;
    if (std::find(known.begin(), known.end(), key) != known.end()) continue;
    at.problem("unknown_key", {{"key", shortened(key)}, {"nearest", nearest(key, known)}, {"known", joined(known)}});
  }
}

void decode_number(const Json& in, double& out, const At& at, const Rules& rules) {
  if (!in.is_number()) return wrong_type(in, at, "number");
  const double value = in.get<double>();
  if (check_range(value, at, rules)) out = value;
}

void decode_integer(const Json& in, long long& out, const At& at, const Rules& rules) {
  if (!in.is_number()) return wrong_type(in, at, "whole number");
  const double value = in.get<double>();
  constexpr double exact = 9007199254740992.0;  // 2^53
  Rules bounds = rules;
  bounds.min = std::max(bounds.min, -exact);
  bounds.max = std::min(bounds.max, exact);
  if (!check_range(value, at, bounds)) return;
  if (value != std::floor(value)) return wrong_type(in, at, "whole number");
  out = static_cast<long long>(value);
}

void decode_text(const Json& in, std::string& out, const At& at, const Rules& rules) {
  if (!in.is_string()) return wrong_type(in, at, "text");
  const std::string& text = in.get_ref<const std::string&>();
  if (text.size() > rules.max_length) return at.problem("too_long", {{"max", std::to_string(rules.max_length)}});
  if (has_control(text)) return at.problem("control_character");
  if (rules.date && !text.empty() && !is_civil_date(text)) return at.problem("bad_date", {{"text", shortened(text)}});
  out = text;
}

void decode_flag(const Json& in, bool& out, const At& at) {
  if (!in.is_boolean()) return wrong_type(in, at, "flag");
  out = in.get<bool>();
}

void decode_reading(const Json& in, Reading& out, const At& at, const Rules& rules) {
  if (in.is_number()) {
    decode_number(in, out.value, at, rules);
    out.sd = rules.sd ? rules.sd() : 0;
    return;
  }
  if (!in.is_object()) return wrong_type(in, at, "number or {value, sd}");
  check_keys(in, {"value", "sd"}, at);
  if (const auto value = in.find("value"); value != in.end()) {
    decode_number(*value, out.value, at.key("value"), rules);
  } else {
    at.problem("missing_key", {{"key", "value"}});
  }
  out.sd = rules.sd ? rules.sd() : 0;
  if (const auto sd = in.find("sd"); sd != in.end()) {
    decode_number(*sd, out.sd, at.key("sd"), {.min = 0, .max = std::min(1e3, rules.max - rules.min)});
  }
}

}  // namespace strandline::wire
