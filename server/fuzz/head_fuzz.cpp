// Any bytes as the head of a request: refused, or handed on as one clean request within its limits.
#include <cstdint>
#include <cstdlib>

#include "request_head.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace strandline::server;
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const std::size_t end = head_end(bytes);
  if (end == std::string_view::npos) return head_so_far(bytes), 0;
  const auto head = read_head(bytes.substr(0, end));
  if (!head) {
    if (head.error().empty()) std::abort();
    return 0;
  }
  const std::string& text = head->text;
  if (head_end(text) != text.size() || head->body_bytes > body_bytes_max) std::abort();
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool end_of_line = text[i] == '\r' ? text.at(i + 1) == '\n' : text[i] == '\n' && i > 0 && text[i - 1] == '\r';
    if (!end_of_line && text[i] != '\t' && (text[i] < 0x20 || text[i] > 0x7E)) std::abort();
  }
  // What is handed on reads as the same request again, but for a sign that is doubled for the library.
  if (text.find('%') != std::string::npos) return 0;
  const auto again = read_head(text);
  if (!again || again->text != text || again->body_bytes != head->body_bytes) std::abort();
  return 0;
}
