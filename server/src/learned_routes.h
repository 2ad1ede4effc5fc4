// Routes that know what results taught.
#pragma once

#include "context.h"
#include "strandline/salon/taught.h"

namespace strandline::server {

void add_learned(httplib::Server& http, Context& context, salon::Learning& learning);  // /learned …, /measure …
// Whether a route is one of the verbs of a visit: it changes nothing.
bool asks_only(std::string_view route);
void add_verbs(httplib::Server& http, Context& context, salon::Learning& learning);  // /assess … /what-if

}  // namespace strandline::server
