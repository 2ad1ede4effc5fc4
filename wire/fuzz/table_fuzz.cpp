// Any bytes as a list of shades: every row is read or refused with a problem, the shelf stays a right one, and what is
// printed of it is read back as the same.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "strandline/wire/shelf_table.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline::wire;
  static const Json shelf = *parse(R"({"id": "s", "ranges": [{"id": "t", "cls": "permanent"},
    {"id": "d", "cls": "direct"}, {"id": "p", "cls": "lightener"}], "products": []})");
  if (size == 0) return 0;
  constexpr const char* ranges[] = {"t", "d", "p", ""};
  const std::string range = ranges[data[0] % 4];
  const auto read = read_table({std::string(reinterpret_cast<const char*>(data) + 1, size - 1), range, {}, {}}, shelf);
  if (!read) {
    if (read.error().empty()) std::abort();
    return 0;
  }
  for (const TableLine& line : read->lines)
    if ((line.is == TableLineIs::refused) == line.problems.empty()) std::abort();
  if (!read_shelf_document(read->document)) std::abort();
  const auto again = read_table({print_table(read->document, range), range, {}, {}}, read->document);
  if (!again || again->document != read->document) std::abort();
  return 0;
}
