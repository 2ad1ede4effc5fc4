// What the routes of visits and of their facts share.
#pragma once

#include <initializer_list>
#include <optional>

#include "context.h"
#include "reply.h"

namespace strandline::server {

wire::Json json_of(const salon::VisitSummary& s);
void reply_saved(httplib::Response& response, const Result<salon::SavedVisit>& saved, int status = 200);
// A whole number without sign, of the header `"7"` or the query `7`; nothing when it is none.
std::optional<std::int64_t> whole(std::string text);
// `limit` of the query, 0 when it is no number; `otherwise` where it is not given.
int limit_of(const httplib::Request& request, int otherwise);
// Answers a query that asks for anything but these; true when it did: what is not understood is not left out unsaid.
bool refused_query(const httplib::Request& request, httplib::Response& response,
                   std::initializer_list<std::string_view> known);

}  // namespace strandline::server
