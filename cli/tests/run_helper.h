#pragma once

#include <sstream>
#include <string>
#include <vector>

#include "src/app.h"

namespace strandline::cli {

struct Ran {
  int code = 0;
  std::string out, err;
};

// The command line in this process; `input` stands on standard input.
inline Ran ran(const std::vector<std::string>& arguments, const std::string& input = "") {
  std::istringstream in(input);
  std::ostringstream out, err;
  Io io{in, out, err, false};
  const int code = run(arguments, io);
  return {code, out.str(), err.str()};
}

inline std::string demo(const std::string& name) {
  return std::string(STRANDLINE_SOURCE_DIR) + "/knowledge/demo/visits/" + name + ".json";
}

}  // namespace strandline::cli
