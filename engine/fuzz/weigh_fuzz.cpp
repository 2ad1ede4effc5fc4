// Whatever a line or a report holds: a weight that can be, or nothing.
#include <cmath>
#include <cstdlib>

#include "strandline/weigh.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto sound = [](const strandline::ScaleReading& r) {
    if (!std::isfinite(r.grams) || std::abs(r.grams) > 50000) std::abort();
  };
  if (const auto reading = strandline::read_usb_report({data, size})) sound(*reading);
  strandline::ScaleLines lines;
  for (const auto& reading : lines.take({reinterpret_cast<const char*>(data), size})) sound(reading);
  return 0;
}
