// The two cookies of the door.
#pragma once

#include "http.h"
#include "strandline/salon/people.h"

namespace strandline::server {

struct Context;

// Not read by scripts, not sent along from other sites' pages, and never in the clear where it came encrypted.
// `seconds` 0 = until the browser is closed.
void set_cookie(const httplib::Request& request, httplib::Response& response, std::string_view name,
                const std::string& token, int seconds);
// The device that was paired, which keeps its token for as long as the house lets it.
void reply_paired(Context& context, const httplib::Request& request, httplib::Response& response,
                  const Result<salon::Paired>& paired);

}  // namespace strandline::server
