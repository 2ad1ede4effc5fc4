// Any bytes as a photo: read or refused with a reason; what is read has all its pixels, and a card is found in it or
// not.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "strandline/wire/picture.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline;
  const auto picture = wire::read_picture({reinterpret_cast<const char*>(data), size});
  if (!picture) {
    if (picture.error().empty()) std::abort();
    return 0;
  }
  if (picture->rgb.size() != 3u * static_cast<std::size_t>(picture->width) * static_cast<std::size_t>(picture->height))
    std::abort();
  const auto seen = card::find(*picture);
  if (!seen && seen.error().empty()) std::abort();
  if (seen && !card::compare(*seen) && card::compare(*seen).error().empty()) std::abort();
  return 0;
}
