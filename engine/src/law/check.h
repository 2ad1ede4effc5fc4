// Input checks shared by the law arithmetic.
#pragma once

#include <cmath>
#include <string>

#include "strandline/result.h"

namespace strandline::law {

inline tl::unexpected<Problems> refuse(std::string code, std::string path) {
  return tl::unexpected(Problems{Problem{std::move(code), std::move(path), {}}});
}

inline bool amount(double value) { return std::isfinite(value) && value >= 0; }

}  // namespace strandline::law
