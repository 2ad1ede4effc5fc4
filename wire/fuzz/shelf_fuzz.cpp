// Any bytes as a shelf and as a policy: refused with problems, or read.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "strandline/wire/document.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  const auto json = wire::parse(std::string_view(reinterpret_cast<const char*>(data), size));
  if (!json) return 0;
  const auto shelf = wire::read_shelf(*json);
  const auto policy = wire::read_policy(*json);
  if (!shelf && shelf.error().empty()) std::abort();
  if (!policy && policy.error().empty()) std::abort();
  return 0;
}
