#include "request_head.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <optional>

#include "strandline/wire/json.h"

namespace strandline::server {

namespace {

constexpr std::string_view end_of_line = "\r\n", empty_line = "\r\n\r\n";

Problems bad(const char* what) { return {{"bad_request", "", {{"what", what}}}}; }

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = lower(c);
  return out;
}

bool is_letter_or_digit(char c) { return (lower(c) >= 'a' && lower(c) <= 'z') || (c >= '0' && c <= '9'); }

// RFC 9110 section 5.6.2.
bool is_token(std::string_view text) {
  constexpr std::string_view marks = "!#$%&'*+-.^_`|~";
  return !text.empty() && std::all_of(text.begin(), text.end(), [&](char c) {
    return is_letter_or_digit(c) || marks.find(c) != std::string_view::npos;
  });
}

bool is_control(char c) { return (static_cast<unsigned char>(c) < 0x20 && c != '\t') || c == 0x7F; }
bool beyond_ascii(char c) { return static_cast<unsigned char>(c) >= 0x80; }

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::optional<unsigned char> hex_byte(std::string_view two) {
  unsigned char out = 0;
  const auto parsed = std::from_chars(two.data(), two.data() + two.size(), out, 16);
  if (two.size() != 2 || parsed.ptr != two.data() + 2 || parsed.ec != std::errc{}) return std::nullopt;
  return out;
}

// A path of our own with its query: visible ASCII, every %xx whole, and text once these are undone.
bool is_target(std::string_view target) {
  if (!target.starts_with('/')) return false;
  std::string undone;
  for (std::size_t i = 0; i < target.size(); ++i) {
    if (target[i] <= ' ' || target[i] == 0x7F || beyond_ascii(target[i])) return false;
    undone += target[i];
    if (target[i] != '%') continue;
    const auto byte = hex_byte(target.substr(i + 1, 2));
    if (!byte) return false;
    undone.back() = static_cast<char>(*byte);
    i += 2;
  }
  return wire::find_invalid_utf8(undone) == std::string_view::npos &&
         std::none_of(undone.begin(), undone.end(), [](char c) { return is_control(c) || c == '\t'; });
}

bool is_known_method(std::string_view method) {
  return method == "GET" || method == "HEAD" || method == "POST" || method == "PUT";
}

bool lists(std::string_view value, std::string_view word) {
  const std::string all = lower(value);
  for (std::size_t from = 0; from <= all.size();) {
    const std::size_t comma = std::min(all.find(',', from), all.size());
    const std::string_view one = trimmed(std::string_view(all).substr(from, comma - from));
    if (trimmed(one.substr(0, one.find(';'))) == word) return true;
    from = comma + 1;
  }
  return false;
}

// Names in lower case; a header that came several times has its values joined.
using Fields = std::map<std::string, std::string>;

std::optional<Problems> read_fields(std::string_view lines, Fields& fields) {
  for (int count = 0; !lines.empty(); ++count) {
    if (count == head_lines_max) return Problems{{"headers_too_large", "", {{"max", std::to_string(head_lines_max)}}}};
    const std::size_t end = lines.find(end_of_line);
    const std::string_view line = lines.substr(0, end);
    lines.remove_prefix(end + end_of_line.size());
    const std::size_t colon = line.find(':');
    if (colon == std::string_view::npos || !is_token(line.substr(0, colon))) return bad("header");
    if (std::any_of(line.begin(), line.end(), is_control)) return bad("control_character");
    const std::string name = lower(line.substr(0, colon));
    const std::string_view value = trimmed(line.substr(colon + 1));
    const auto [at, is_new] = fields.try_emplace(name, value);
    if (!is_new) at->second.append(",").append(value);
    const bool read = std::find(headers_read.begin(), headers_read.end(), name) != headers_read.end();
    if (!read) continue;
    if (!is_new && name != "accept-encoding" && name != "if-none-match") return bad("header_twice");
    if (name != "cookie" && std::any_of(value.begin(), value.end(), beyond_ascii)) return bad("header_not_ascii");
  }
  return std::nullopt;
}

Result<std::size_t> body_length(std::string_view method, const Fields& fields) {
  const bool has_body = method == "POST" || method == "PUT";
  if (fields.contains("transfer-encoding")) return tl::unexpected(bad("transfer_encoding"));
  const auto packed = fields.find("content-encoding");
  if (packed != fields.end() && lower(packed->second) != "identity") {
    return tl::unexpected(Problems{{"packed_content", "", {}}});
  }
  const auto stated = fields.find("content-length");
  if (stated == fields.end()) return has_body ? tl::unexpected(bad("length")) : Result<std::size_t>(0);
  const std::string& digits = stated->second;
  std::size_t bytes = 0;
  const auto parsed = std::from_chars(digits.data(), digits.data() + digits.size(), bytes);
  if (parsed.ec != std::errc{} || parsed.ptr != digits.data() + digits.size()) return tl::unexpected(bad("length"));
  if (bytes > 0 && !has_body) return tl::unexpected(bad("body_without_use"));
  if (bytes > body_bytes_max) {
    return tl::unexpected(
        Problems{{"document_too_large", "", {{"bytes", digits}, {"max", std::to_string(body_bytes_max)}}}});
  }
  return bytes;
}

// cpp-httplib undoes %xx in the values of headers; doubled, they reach the routes as they were sent.
std::string guarded(std::string_view value) {
  std::string out;
  for (const char c : value) out += c == '%' ? std::string("%25") : std::string(1, c);
  return out;
}

// Our own of "a=b; c=d", if their values are tokens.
std::string own_cookies(std::string_view value) {
  constexpr std::string_view signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_";
  std::string out;
  while (!value.empty()) {
    const std::string_view pair = trimmed(value.substr(0, value.find(';')));
    value.remove_prefix(
        std::min(value.size(), value.find(';') == std::string_view::npos ? value.size() : value.find(';') + 1));
    const std::size_t equals = pair.find('=');
    if (equals == std::string_view::npos) continue;
    const std::string_view name = pair.substr(0, equals), token = pair.substr(equals + 1);
    if (name != session_cookie && name != device_cookie) continue;
    if (token.empty() || token.find_first_not_of(signs) != std::string_view::npos) continue;
    out.append(out.empty() ? "" : "; ").append(pair);
  }
  return out;
}

// Brotli at the quality that the library sets takes 55 ms for an answer of 67 KB that gzip packs in 2: only gzip
// is handed on. Of Expect only what the library knows.
std::string handed_on(const std::string& name, const std::string& value) {
  if (name == "cookie") return own_cookies(value);
  if (name == "accept-encoding") return lists(value, "gzip") ? "gzip" : "";
  if (name == "expect") return lower(value) == "100-continue" ? "100-continue" : "";
  return guarded(value);
}

}  // namespace

std::size_t head_end(std::string_view bytes) {
  const std::size_t at = bytes.find(empty_line);
  return at == std::string_view::npos ? at : at + empty_line.size();
}

Problems head_so_far(std::string_view bytes) {
  if (std::min(bytes.find('\n'), bytes.size()) > target_bytes_max + 64) {
    return {{"path_too_long", "", {{"max", std::to_string(target_bytes_max)}}}};
  }
  if (bytes.size() > head_bytes_max) return {{"headers_too_large", "", {{"max", std::to_string(head_bytes_max)}}}};
  return {};
}

Result<RequestHead> read_head(std::string_view bytes) {
  if (Problems problems = head_so_far(bytes); !problems.empty()) return tl::unexpected(std::move(problems));
  const std::size_t line_end = bytes.find(end_of_line);
  const std::string_view line = bytes.substr(0, line_end);
  const std::size_t first = line.find(' '), last = line.rfind(' ');
  if (first == std::string_view::npos || first == last) return tl::unexpected(bad("request_line"));
  const std::string_view method = line.substr(0, first), version = line.substr(last + 1);
  const std::string_view target = line.substr(first + 1, last - first - 1);
  if (version != "HTTP/1.1" && version != "HTTP/1.0") return tl::unexpected(bad("version"));
  if (!is_token(method)) return tl::unexpected(bad("request_line"));
  if (!is_known_method(method)) {
    return tl::unexpected(Problems{{"method_not_allowed", "", {{"method", std::string(method.substr(0, 20))}}}});
  }
  if (!is_target(target)) return tl::unexpected(bad("path"));

  Fields fields;
  const std::size_t from = line_end + end_of_line.size();
  if (auto problems = read_fields(bytes.substr(from, bytes.size() - from - end_of_line.size()), fields)) {
    return tl::unexpected(std::move(*problems));
  }
  if (!fields.contains("host") || fields["host"].empty()) return tl::unexpected(bad("host"));
  const auto length = body_length(method, fields);
  if (!length) return tl::unexpected(length.error());

  RequestHead out;
  out.body_bytes = *length;
  out.close = version == "HTTP/1.0" || lists(fields["connection"], "close");
  out.text.append(method).append(" ").append(target).append(" HTTP/1.1\r\n");
  for (const std::string_view name : headers_read) {
    const auto field = fields.find(std::string(name));
    const std::string value = field == fields.end() ? "" : handed_on(field->first, field->second);
    if (!value.empty()) out.text.append(name).append(": ").append(value).append(end_of_line);
  }
  out.text.append(end_of_line);
  return out;
}

}  // namespace strandline::server
