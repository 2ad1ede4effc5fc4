// The head of a request, read strictly (RFC 9112) before any library sees it. A route can ask only for the headers
// named in `headers_read`; all others are dropped unread. Add a name there before using it.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include "strandline/result.h"

namespace strandline::server {

// The bodies that this server reads.
inline constexpr std::size_t body_bytes_max = 4u << 20;
// Common practice: others stop at 8 to 32 KiB and about a hundred fields.
inline constexpr std::size_t head_bytes_max = 32u << 10;
inline constexpr std::size_t target_bytes_max = 8000;  // RFC 9112 section 3 asks for at least that
inline constexpr int head_lines_max = 100;

inline constexpr std::array<std::string_view, 9> headers_read{
    "host",          "origin",          "content-type", "content-length", "if-match",
    "if-none-match", "accept-encoding", "expect",       "cookie"};

// Of the cookies, which other programs of this machine may have set too, those are handed on.
inline constexpr std::string_view session_cookie = "strandline-session", device_cookie = "strandline-device";

struct RequestHead {
  std::string text;            // request line and read headers, as cpp-httplib takes them, with the empty line
  std::size_t body_bytes = 0;  // what follows
  bool close = false;          // no further request is wanted on this connection
};

// Where the head ends that `bytes` begin with: one past its empty line, or npos when that has not come.
std::size_t head_end(std::string_view bytes);

// Whether `bytes`, of which no end has come yet, can still become a head. Problems: path_too_long,
// headers_too_large.
Problems head_so_far(std::string_view bytes);

// `bytes` up to head_end. Problems: those of head_so_far; bad_request {what}; method_not_allowed {method};
// packed_content {how} (a body is never unpacked); document_too_large {bytes, max}.
Result<RequestHead> read_head(std::string_view bytes);

}  // namespace strandline::server
