// What a stage answers when it cannot go on: values, never sentences.
#pragma once

#include <map>
#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

namespace strandline {

// One thing wrong with the input (or one thing a person must know). `code` is a stable word such as
// "level_out_of_range"; `path` is a JSON pointer into the document ("/head/areas/0/spans/1/level"); `params` fill the
// sentence that the doors keep in their dictionaries. The remedy belongs to the code and is worded there too.
struct Problem {
  std::string code;
  std::string path;
  std::map<std::string, std::string> params;

  bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

// Absent vs failed: a function that can fail on its input returns Result<T>; one that may find nothing returns
// std::optional<T>.
template <class T>
using Result = tl::expected<T, Problems>;

}  // namespace strandline
