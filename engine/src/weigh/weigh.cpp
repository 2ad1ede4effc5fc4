#include "strandline/weigh.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace strandline {
namespace {

constexpr std::size_t kLongestLine = 64;  // of both forms none is longer than 40
constexpr double kMost = 50000;           // grams; no scale of a mixing counter says more

struct Unit {
  std::string_view word;
  std::uint8_t usage;  // in the usage tables; 0 = has none here
  double grams;
};

// International pound and its parts (exact), metric units (exact); troy ounce and grain of the same pound (exact).
constexpr std::array<Unit, 9> kUnits{{{"mg", 1, 0.001},
                                      {"g", 2, 1},
                                      {"kg", 3, 1000},
                                      {"ct", 4, 0.2},
                                      {"gn", 6, 0.06479891},
                                      {"dwt", 7, 1.55517384},
                                      {"ozt", 10, 31.1034768},
                                      {"oz", 11, 28.349523125},
                                      {"lb", 12, 453.59237}}};

bool is_space(char c) { return c == ' ' || c == '\t'; }

// Takes spaces and then one word off the front.
std::string_view next_word(std::string_view& text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  std::size_t n = 0;
  while (n < text.size() && !is_space(text[n])) ++n;
  const auto word = text.substr(0, n);
  text.remove_prefix(n);
  return word;
}

std::optional<double> number_of(std::string_view word) {
  if (word.starts_with('+')) word.remove_prefix(1);
  if (word.empty() || !std::all_of(word.begin() + (word.front() == '-'), word.end(),
                                   [](char c) { return (c >= '0' && c <= '9') || c == '.'; }))
    return std::nullopt;
  double value = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value, std::chars_format::fixed);
  if (error != std::errc{} || end != word.data() + word.size()) return std::nullopt;
  return value;
}

std::optional<ScaleReading> weight(double value, double unit, bool stable) {
  const double grams = value * unit;
  if (!std::isfinite(grams) || std::abs(grams) > kMost) return std::nullopt;
  return ScaleReading{grams, stable ? ScaleState::stable : ScaleState::moving};
}

// "-   8.5 g": a sign may stand by itself before the weight.
std::optional<ScaleReading> weight_and_unit(std::string_view rest, bool stable) {
  auto word = next_word(rest);
  const bool minus = word == "-";
  if (minus || word == "+") word = next_word(rest);
  const auto value = number_of(word);
  if (!value) return std::nullopt;
  const auto name = next_word(rest);
  const auto unit = std::ranges::find(kUnits, name, &Unit::word);
  if (unit == kUnits.end()) return std::nullopt;
  const auto mark = next_word(rest);
  return weight(minus ? -*value : *value, unit->grams, stable && mark != "?");
}

// An answer to S or SI; `rest` is what follows the command.
std::optional<ScaleReading> answer(std::string_view rest) {
  auto after = rest;
  const auto mark = next_word(after);
  if (mark == "?") return weight_and_unit(after, false);
  if (mark == "^") return ScaleReading{0, ScaleState::overload};
  if (mark == "v") return ScaleReading{0, ScaleState::below_zero};
  if (mark == "E") return ScaleReading{0, ScaleState::fault};
  return weight_and_unit(rest, true);
}

}  // namespace

std::optional<ScaleReading> read_usb_report(std::span<const std::uint8_t> report) {
  constexpr std::uint8_t kDataReport = 3;
  if (report.size() == 6 && report.front() == kDataReport) report = report.subspan(1);
  if (report.size() != 5) return std::nullopt;
  const auto unit = std::ranges::find(kUnits, report[1], &Unit::usage);
  const auto exponent = static_cast<std::int8_t>(report[2]);
  const double raw = report[3] + 256 * report[4];
  switch (report[0]) {  // status of the usage tables
    case 1:
    case 7:
    case 8:
      return ScaleReading{0, ScaleState::fault};
    case 6:
      return ScaleReading{0, ScaleState::overload};
    case 5:
      return ScaleReading{0, ScaleState::below_zero};
    case 2:  // stable at zero
      return ScaleReading{0, ScaleState::stable};
    case 3:
    case 4:
      break;
    default:
      return std::nullopt;
  }
  if (unit == kUnits.end()) return std::nullopt;
  return weight(raw * std::pow(10.0, exponent), unit->grams, report[0] == 4);
}

std::optional<ScaleReading> read_scale_line(std::string_view line) {
  auto rest = line;
  const auto first = next_word(rest);
  if (first == "S" || first == "SI") return answer(rest);
  return weight_and_unit(line, true);
}

std::vector<ScaleReading> ScaleLines::take(std::string_view bytes) {
  std::vector<ScaleReading> out;
  for (const char c : bytes) {
    if (c != '\r' && c != '\n') {
      too_long_ = too_long_ || line_.size() >= kLongestLine;
      if (!too_long_) line_ += c;
      continue;
    }
    if (!too_long_)
      if (const auto reading = read_scale_line(line_)) out.push_back(*reading);
    line_.clear();
    too_long_ = false;
  }
  return out;
}

}  // namespace strandline
