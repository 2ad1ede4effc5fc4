// Figures of a file of constants, each within its bounds.
#pragma once

#include <map>
#include <string>

#include "strandline/result.h"
#include "strandline/wire/json.h"

namespace strandline::salon {

class Figures {
 public:
  // Problem missing_key {key}.
  static Result<Figures> read(const wire::Json& json);
  // Bounds are closed, a whole number is asked for where `into` is one; what is wrong is told by problems().
  void take(const char* key, int& into, int least, int most);
  void take(const char* key, double& into, double least, double most);
  const Problems& problems() const { return problems_; }

 private:
  template <class Number>
  void take_within(const char* key, Number& into, Number least, Number most);

  std::map<std::string, double> values_;
  Problems problems_;
};

}  // namespace strandline::salon
