#include "guard.h"

#include <algorithm>
#include <cctype>

namespace strandline::server {

namespace {

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

// "host:80" → "host"; "[::1]:80" → "[::1]". Anything else stays as it is.
std::string without_port(const std::string& host) {
  const std::size_t colon = host.find_last_not_of("0123456789");
  if (colon == std::string::npos || host[colon] != ':' || colon + 1 == host.size()) return host;
  return host.substr(0, colon);
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
  if (!ours(host)) return {one("host_not_allowed", "host", host)};
  if (request.has_header("Origin")) {
    const std::string origin = lower(request.get_header_value("Origin"));
    if (origin != "http://" + host && origin != "https://" + host) return {one("origin_not_allowed", "origin", origin)};
  }
  if (request.method == "GET" || request.method == "HEAD") return {};
  const std::string type = lower(request.get_header_value("Content-Type"));
  if (type != "application/json" && !type.starts_with("application/json;")) {
    return {one("not_json_content", "type", type)};
  }
  return {};
}

void set_headers(const httplib::Request& request, httplib::Response& response) {
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
  // cpp-httplib's own: they name times and ranges that are not ours.
  for (const char* name : {"Connection", "Keep-Alive", "Accept-Ranges"}) response.headers.erase(name);
  if (encrypted(request)) response.set_header("Strict-Transport-Security", "max-age=31536000");
  if (closing(request)) response.set_header("Connection", "close");
}

}  // namespace strandline::server
