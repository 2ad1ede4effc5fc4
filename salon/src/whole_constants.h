// Whole numbers of a file of constants, each within its bounds.
#pragma once

#include <map>
#include <string>

#include "strandline/result.h"
#include "strandline/wire/json.h"

namespace strandline::salon {

class WholeConstants {
 public:
  // Problem missing_key {key}.
  static Result<WholeConstants> read(const wire::Json& json);
  // Bounds are closed; what is wrong is told by problems().
  void take(const char* key, int& into, int least, int most);
  const Problems& problems() const { return problems_; }

 private:
  std::map<std::string, double> values_;
  Problems problems_;
};

}  // namespace strandline::salon
