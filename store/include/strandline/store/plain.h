#pragma once

#include <string>
#include <string_view>

namespace strandline::store {

// A name as it is looked for: without capitals, accents and the white space around it. What is not UTF-8 is left as it
// is.
std::string plain(std::string_view text);

bool is_utf8(std::string_view text);

}  // namespace strandline::store
