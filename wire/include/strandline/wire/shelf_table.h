// A list of shades, as it is pasted from a spreadsheet or read from a CSV file, put on a shelf; and back. Nothing is
// guessed from a code: level and tone come from their columns or from words such as "7 copper".
#pragma once

#include <optional>

#include "strandline/wire/shelf_document.h"

namespace strandline::wire {

enum class TableColumn {
  code,
  name,
  level,
  tone,
  cls,
  strength,  // % w/w hydrogen peroxide
  price,     // of one package
  price_per_g,
  package_g,
  stock_g,
  density,
  barcode,
  unused
};

enum class TableLineIs { heading, added, changed, same, refused };

struct TableLine {
  int line = 0;      // 1, 2, 3 … of the text
  std::string text;  // its beginning
  TableLineIs is = TableLineIs::refused;
  std::string product;  // its id in the document
  Problems problems;    // why it is refused
};

struct TableAsked {
  std::string text;                  // UTF-8, at most kTableBytes
  std::string range;                 // id of a range of the document; "" = developers
  std::optional<double> package_g;   // of the products that say none
  std::vector<TableColumn> columns;  // their meaning; empty = by the heading or by what stands in them
};

struct TableRead {
  std::string separator;  // "tab", "semicolon", "comma", or "none" where there is one column
  std::vector<TableColumn> columns;
  bool by_heading = false;
  std::vector<TableLine> lines;
  Json document;  // the shelf with every line that was understood; all else as it was
};

inline constexpr std::size_t kTableBytes = 1u << 20;
inline constexpr std::size_t kTableLines = 2000;

// Lines that are not understood are refused one by one, with codes no_level {text} · no_tone {text} · two_tones {text}
// · no_name · no_strength {text} · not_a_number_here {text, column} · thousands_or_not {text} · price_without_package ·
// line_twice {line} · too_many_cells · quote_not_closed · those of decode. Problems of the whole: document_too_large ·
// too_many {max} · invalid_utf8 · unknown_range {range} · wrong_type where the document is no shelf.
Result<TableRead> read_table(const TableAsked& asked, const Json& document);
Json answer_json(const TableRead& read);
// {"document", "text", "range", "package_g", "columns"}, as a door asks for it.
Result<Json> answer_table(const Json& asked);

// The products of a range ("" = those without one) as CSV (RFC 4180), read back by read_table(). What is not known is
// an empty cell. The document must be a right one.
std::string print_table(const Json& document, const std::string& range);

}  // namespace strandline::wire
