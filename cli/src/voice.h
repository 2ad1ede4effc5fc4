// What the server says while it runs: sentences for a person, or JSON, an object a line. Names stand in neither.
#pragma once

#include <functional>
#include <iosfwd>
#include <mutex>
#include <string>

#include "strandline/result.h"
#include "strandline/wire/json.h"

namespace strandline::cli {

// Safe from many threads at once.
class Voice {
 public:
  // `now` gives the instant, UTC.
  Voice(std::ostream& err, bool json, std::function<std::string()> now);
  bool json() const { return json_; }
  void event(const wire::Json& event);
  // What a reading of the salon file or the making of a copy found wrong.
  void problems(const Problems& found);

 private:
  void write(const std::string& text);

  std::ostream& err_;
  const bool json_;
  std::function<std::string()> now_;
  std::mutex mutex_;
};

}  // namespace strandline::cli
