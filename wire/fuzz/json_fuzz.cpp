// Any bytes as JSON: refused with one problem, or read into a value that prints as a text of the same value.
#include <cstdint>
#include <cstdlib>

#include "strandline/wire/json.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto value = wire::parse(text, {.bytes = 1u << 16, .depth = 16});
  if (!value) {
    if (value.error().size() != 1 || wire::print(wire::problems_json(value.error())).empty()) std::abort();
    return 0;
  }
  const auto again = wire::parse(wire::print(*value));
  if (!again || *again != *value) std::abort();
  return 0;
}
