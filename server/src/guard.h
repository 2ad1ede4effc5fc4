// Who may ask what: checked before a request reaches its route. Its form was checked before (request_head.h).
#pragma once

#include <string>
#include <vector>

#include "http.h"
#include "strandline/result.h"

namespace strandline::server {

struct Guard {
  std::vector<std::string> hosts;  // lower case, with or without port

  // Problems: host_not_allowed (a name that is not ours: DNS rebinding), origin_not_allowed (another site's
  // page asks), not_json_content.
  Problems check(const httplib::Request& request) const;
};

// What every response carries: rules for the browser, and whether the connection ends.
void set_headers(const httplib::Request& request, httplib::Response& response);

}  // namespace strandline::server
