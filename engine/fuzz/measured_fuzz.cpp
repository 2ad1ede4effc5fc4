// Any bytes at all: a measurement file is read or refused with a reason, and what is read is possible.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "strandline/measured.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto file = measured::read(text);
  if (!file && file.error().empty()) __builtin_trap();
  if (file && file->samples.empty()) __builtin_trap();
  if (file)
    for (const auto& s : file->samples)
      if (!std::isfinite(s.lab.l) || !std::isfinite(s.lab.a) || !std::isfinite(s.lab.b)) __builtin_trap();
  if (const auto lab = measured::typed(text); lab && !(lab->l >= 0 && lab->l <= 100)) __builtin_trap();
  return 0;
}
