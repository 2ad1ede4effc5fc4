#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "src/app.h"
#include "strandline/wire/json.h"

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
  return STRANDLINE_SOURCE_DIR "/knowledge/demo/visits/" + name + ".json";
}

// A demo visit worked out with fewer scenarios, for standard input ("-").
inline std::string quick_demo(const std::string& name) {
  std::ifstream in(demo(name));
  std::stringstream text;
  text << in.rdbuf();
  wire::Json document = *wire::parse(text.str());
  document["options"]["scenarios"] = 16;
  return wire::print(document);
}

}  // namespace strandline::cli
