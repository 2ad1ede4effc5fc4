// Who may ask what: checked before a request reaches its route.
#pragma once

#include <string>
#include <vector>

#include "http.h"
#include "strandline/result.h"

namespace strandline::server {

// The bodies that this server reads.
inline constexpr std::size_t body_bytes_max = 4u << 20;

struct Guard {
  std::vector<std::string> hosts;  // lower case, with or without port

  // Problems: host_not_allowed (a name that is not ours: DNS rebinding), origin_not_allowed (another site's
  // page asks for a change), not_json_content, document_too_large, method_not_allowed.
  Problems check(const httplib::Request& request) const;
};

// What every response carries.
void set_security_headers(const httplib::Request& request, httplib::Response& response);

}  // namespace strandline::server
