// What each column of a pasted table holds.
#pragma once

#include "table_text.h"

namespace strandline::wire {

// A shade as words name it: "7 copper", "clear".
struct NamedShade {
  std::optional<double> level;
  std::vector<Tone> tones;  // in the order of the words; more than one = nobody knows which is meant
  bool clear = false;
};
// Words that say neither are left alone.
NamedShade named_shade(const std::string& name, bool hues);

// By the first row, if it is a heading; nothing when it is none.
std::optional<std::vector<TableColumn>> columns_by_heading(const TableRow& row);
// By what stands in them. `shades`: products that have a level and a tone.
std::vector<TableColumn> columns_by_content(const std::vector<TableRow>& rows, bool shades);

}  // namespace strandline::wire
