#include "guard.h"

#include <algorithm>
#include <cctype>
#include <charconv>

namespace strandline::server {

namespace {

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

// "host:port" → "host"; "[::1]:80" → "[::1]".
std::string without_port(const std::string& host) {
  const std::size_t colon = host.rfind(':');
  const std::size_t bracket = host.rfind(']');
  if (colon == std::string::npos || (bracket != std::string::npos && colon < bracket)) return host;
  return host.substr(0, colon);
}

bool changes_something(const std::string& method) { return method != "GET" && method != "HEAD" && method != "OPTIONS"; }

bool is_known_method(const std::string& method) {
  return method == "GET" || method == "HEAD" || method == "POST" || method == "PUT";
}

Problem one(const char* code, std::string key = "", std::string value = "") {
  Problem out{code, "", {}};
  if (!key.empty()) out.params[std::move(key)] = std::move(value);
  return out;
}

}  // namespace

Problems Guard::check(const httplib::Request& request) const {
  const std::string host = lower(request.get_header_value("Host"));
  const auto ours = [&](const std::string& name) {
    return std::find(hosts.begin(), hosts.end(), name) != hosts.end() ||
           std::find(hosts.begin(), hosts.end(), without_port(name)) != hosts.end();
  };
  if (request.get_header_value_count("Host") != 1 || !ours(host)) return {one("host_not_allowed", "host", host)};
  if (!is_known_method(request.method)) return {one("method_not_allowed", "method", request.method)};
  if (!changes_something(request.method)) return {};
  if (request.has_header("Origin")) {
    const std::string origin = lower(request.get_header_value("Origin"));
    if (origin != "http://" + host && origin != "https://" + host) return {one("origin_not_allowed", "origin", origin)};
  }
  const std::string type = lower(request.get_header_value("Content-Type"));
  if (type != "application/json" && !type.starts_with("application/json;")) {
    return {one("not_json_content", "type", type)};
  }
  const std::string length = request.get_header_value("Content-Length");
  std::size_t bytes = 0;
  const auto parsed = std::from_chars(length.data(), length.data() + length.size(), bytes);
  // A body without a length, or of two minds about it, is not read.
  if (parsed.ec != std::errc{} || parsed.ptr != length.data() + length.size() ||
      request.get_header_value_count("Content-Length") != 1 || request.has_header("Transfer-Encoding")) {
    return {one("bad_request")};
  }
  if (bytes > body_bytes_max) {
    Problem problem = one("document_too_large", "bytes", length);
    problem.params["max"] = std::to_string(body_bytes_max);
    return {problem};
  }
  return {};
}

void set_security_headers(const httplib::Request& request, httplib::Response& response) {
  response.set_header(
      "Content-Security-Policy",
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; "
      "connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'self'; "
      "frame-ancestors 'none'");
  response.set_header("X-Content-Type-Options", "nosniff");
  response.set_header("X-Frame-Options", "DENY");
  response.set_header("Referrer-Policy", "no-referrer");
  response.set_header("Cross-Origin-Opener-Policy", "same-origin");
  response.set_header("Cross-Origin-Resource-Policy", "same-origin");
  response.set_header("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
  if (!response.has_header("Cache-Control")) {
    response.set_header("Cache-Control", request.path.starts_with("/api/") ? "no-store" : "no-cache");
  }
}

}  // namespace strandline::server
