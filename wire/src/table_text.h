// Cells, words and numbers of a pasted table.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strandline/head.h"
#include "strandline/wire/shelf_table.h"

namespace strandline::wire {

struct TableRow {
  int line = 0;
  std::string text;
  std::vector<std::string> cells;  // without the spaces around them
  bool open_quote = false;
};

// '\t', ';', ',', or 0 where the text has one column.
char separator_of(std::string_view text);
// Rows that are not blank (RFC 4180, with this separator). A byte order mark in front is left out.
std::vector<TableRow> split_table(std::string_view text, char separator);
// Quoted where it must be.
std::string csv_cell(const std::string& text);

// Small letters without accents, spaces as they are typed everywhere: "Cuivré" → "cuivre".
std::string folded(std::string_view text);
std::vector<std::string> words_of(std::string_view folded_text);

// Words of English, German, French and Spanish.
std::optional<TableColumn> heading(std::string_view cell);
std::optional<Tone> tone_word(std::string_view folded_word);
// Of hues without a level: "yellow", "blue".
std::optional<Tone> hue_word(std::string_view folded_word);
bool clear_word(std::string_view folded_word);

// With a decimal point or comma; units and currency around it are left out. Nothing when it is no number.
std::optional<double> table_number(std::string_view cell);
// "1.000" or "1,000": a thousand to some, one to others.
bool thousands_or_not(std::string_view cell);
// A whole level, 1 to 12: "7", not "7.4".
std::optional<double> whole_level(std::string_view word);

}  // namespace strandline::wire
