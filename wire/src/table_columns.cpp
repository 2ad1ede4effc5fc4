#include "table_columns.h"

#include <algorithm>
#include <functional>

namespace strandline::wire {

namespace {

constexpr int most_of = 2;  // a column is of a kind when at least one of two of its cells is

bool mostly(const std::vector<TableRow>& rows, std::size_t column, const std::function<bool(const std::string&)>& is) {
  int filled = 0, those = 0;
  for (const TableRow& row : rows) {
    if (column >= row.cells.size() || row.cells[column].empty()) continue;
    ++filled;
    those += is(row.cells[column]);
  }
  return filled > 0 && those * most_of >= filled * (most_of - 1);
}

bool is_level(const std::string& cell) { return whole_level(cell).has_value(); }
bool is_tone(const std::string& cell) { return hue_word(folded(cell)).has_value(); }
bool is_name(const std::string& cell) {
  const NamedShade named = named_shade(cell, true);
  return named.clear || !named.tones.empty();
}
bool is_words(const std::string& cell) { return !table_number(cell) || cell.find(' ') != std::string::npos; }

}  // namespace

NamedShade named_shade(const std::string& name, bool hues) {
  NamedShade out;
  const auto tone = [&](std::string_view word) { return hues ? hue_word(word) : tone_word(word); };
  for (const std::string& word : words_of(folded(name))) {
    if (const auto level = whole_level(word); level && !out.level) {
      out.level = level;
      continue;
    }
    out.clear |= clear_word(word);
    std::size_t from = 0;
    while (from <= word.size()) {  // "gold-copper"
      const std::size_t to = std::min(word.find('-', from), word.size());
      if (const auto found = tone(std::string_view(word).substr(from, to - from));
          found && std::find(out.tones.begin(), out.tones.end(), *found) == out.tones.end())
        out.tones.push_back(*found);
      from = to + 1;
    }
  }
  return out;
}

std::optional<std::vector<TableColumn>> columns_by_heading(const TableRow& row) {
  std::vector<TableColumn> out;
  int known = 0;
  for (const std::string& cell : row.cells) {
    TableColumn column = heading(cell).value_or(TableColumn::unused);
    if (std::find(out.begin(), out.end(), column) != out.end()) column = TableColumn::unused;  // the first one counts
    known += column != TableColumn::unused;
    out.push_back(column);
  }
  return known > 0 ? std::optional(out) : std::nullopt;
}

std::vector<TableColumn> columns_by_content(const std::vector<TableRow>& rows, bool shades) {
  std::size_t width = 0;
  for (const TableRow& row : rows) width = std::max(width, row.cells.size());
  std::vector<TableColumn> out(width, TableColumn::unused);
  const auto first = [&](const std::function<bool(const std::string&)>& is) {
    std::size_t at = 0;
    while (at < width && (out[at] != TableColumn::unused || !mostly(rows, at, is))) ++at;
    return at;
  };
  const auto take = [&](std::size_t at, TableColumn column) {
    if (at < width) out[at] = column;
    return at < width;
  };
  // A column of tones is one of names too; beside one of levels it is the tone.
  const std::size_t tones = shades ? first(is_tone) : width, levels = shades ? first(is_level) : width;
  const bool apart = tones < width && levels < width;
  if (apart) take(tones, TableColumn::tone), take(levels, TableColumn::level);
  const std::size_t said = apart ? std::min(tones, levels) : first(shades ? is_name : is_words);
  if (!apart) take(said, TableColumn::name);
  // What stands before the words is what is printed on the tube; nothing is known of what stands behind them.
  for (std::size_t at = 0; at < said && said < width; ++at) {
    if (out[at] == TableColumn::unused && take(at, TableColumn::code)) break;
  }
  return out;
}

}  // namespace strandline::wire
