#include "strandline/store/plain.h"

#include <utf8proc.h>

#include <cstdlib>
#include <memory>
#include <new>

namespace strandline::store {

std::string plain(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return "";
  text = text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
  utf8proc_uint8_t* mapped = nullptr;
  constexpr int how = UTF8PROC_COMPAT | UTF8PROC_DECOMPOSE | UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK | UTF8PROC_STABLE;
  // Several options at once are a value of the library's enumeration that has no name.
  // NOLINTNEXTLINE(clang-analyzer-optin.core.EnumCastOutOfRange)
  const auto options = static_cast<utf8proc_option_t>(how);
  const utf8proc_ssize_t length = utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                               static_cast<utf8proc_ssize_t>(text.size()), &mapped, options);
  const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> freed(mapped, &std::free);
  if (length == UTF8PROC_ERROR_NOMEM) throw std::bad_alloc();
  if (length < 0) return std::string(text);
  return {reinterpret_cast<const char*>(mapped), static_cast<std::size_t>(length)};
}

bool is_utf8(std::string_view text) {
  const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data());
  const auto size = static_cast<utf8proc_ssize_t>(text.size());
  utf8proc_int32_t sign = 0;
  for (utf8proc_ssize_t at = 0; at < size;) {
    const utf8proc_ssize_t length = utf8proc_iterate(bytes + at, size - at, &sign);
    if (length <= 0) return false;
    at += length;
  }
  return true;
}

}  // namespace strandline::store
