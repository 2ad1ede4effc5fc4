// Any bytes: the text is refused or read; a visit that is read can be written and read again.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "strandline/wire/document.h"
#include "strandline/wire/encode.h"
#include "strandline/wire/visit_fields.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  const auto json = wire::parse(std::string_view(reinterpret_cast<const char*>(data), size));
  if (!json) return 0;
  const wire::Sources sources{[](const std::string&) { return std::optional(Shelf{}); },
                              [](const std::string&) { return std::optional(Policy{}); }};
  const auto read = wire::read_visit(*json, sources);
  if (!read) return 0;
  Head again;
  Problems problems;
  wire::decode(wire::encode(read->visit.head), again, wire::At(problems, ""));
  if (!problems.empty()) std::abort();
  return 0;
}
