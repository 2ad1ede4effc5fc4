// A table with separators, as a measurement file's table.
#pragma once

#include <string_view>

#include "strandline/cgats.h"

namespace strandline::measured {

// The separator is the one of tab, semicolon and comma that the heading has; lines that are empty or begin with # are
// passed over. Headings "L*", "a*", "b*" in any case stand for LAB_L …. Problems: table_no_heading ·
// table_row_length {line, expected, got} · cgats_too_large · cgats_not_text · cgats_too_many_rows.
Result<cgats::Document> read_table(std::string_view text);

}  // namespace strandline::measured
