// Answers of the API: JSON, problems with the right status, nothing cached.
#pragma once

#include "http.h"
#include "strandline/wire/json.h"

namespace strandline::server {

// The one table from problem to HTTP status; what is not in it is a problem of the document, 422.
int status_of(const Problems& problems);

void reply(httplib::Response& response, const wire::Json& body, int status = 200);
void reply(httplib::Response& response, const Problems& problems);

// Success as JSON made by `encode`, or the problems.
template <class T, class Encode>
void reply_with(httplib::Response& response, const Result<T>& result, Encode&& encode, int status = 200) {
  if (!result) return reply(response, result.error());
  reply(response, encode(*result), status);
}

}  // namespace strandline::server
