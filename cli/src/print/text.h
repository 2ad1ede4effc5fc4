// Small words for printing: widths in characters, numbers without noise, nothing a terminal would obey.
#pragma once

#include <string>
#include <string_view>

namespace strandline::cli {

// Characters that `text` (UTF-8) takes on a terminal; colour sequences take none.
std::size_t width(std::string_view text);
// Control characters, marks of direction and characters without a picture written as <U+202E>, bytes that are not
// UTF-8 as <0x9B>: a document cannot write to the terminal, turn a line round or look like another.
std::string printable(std::string_view text);
// At most `decimals` decimals, without trailing zeros.
std::string number(double value, int decimals = 1);
std::string signed_number(double value, int decimals = 1);
std::string percent(double share);  // 0.873 → "87 %"
std::string minutes(double value);  // 95 → "1:35"
std::string padded(std::string_view text, std::size_t columns, bool right = false);

}  // namespace strandline::cli
