// Any bytes at all: the reader answers, and what it accepts can be used.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "strandline/cgats.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  const auto doc = cgats::read({reinterpret_cast<const char*>(data), size}, {.bytes = 1 << 16, .rows = 64});
  if (!doc) return doc.error().empty() ? __builtin_trap(), 0 : 0;
  for (const auto& table : doc->tables)
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
      if (table.rows[i].cells.size() != table.fields.size()) __builtin_trap();
      (void)cgats::spectrum(table, static_cast<int>(i));
      (void)cgats::lab(table, static_cast<int>(i));
    }
  return 0;
}
