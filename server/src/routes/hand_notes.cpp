#include "strandline/salon/hand_notes.h"

#include "context.h"
#include "of_visits.h"
#include "reply.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

void reply_notes(Context& context, const salon::Who& who, Response& response) {
  reply_with(response, salon::hand_notes(context.world, who.person.id), [](const std::vector<salon::HandNote>& all) {
    wire::Json list = wire::Json::array();
    for (const salon::HandNote& n : all)
      list.push_back(
          {{"technique", n.technique}, {"own", !n.person.empty()}, {"text", n.text}, {"written_at", n.written_at}});
    return wire::Json{{"schema", "strandline.hand-notes/1"}, {"notes", std::move(list)}};
  });
}

// {"text", "own"}: the note of the house, or of whoever is in.
void put_note(Context& context, const Request& request, Response& response) {
  const auto who = asking(context, request);
  if (!who) return reply(response, who.error());
  const auto written = wire::parse(request.body).and_then([&](const wire::Json& body) -> Result<void> {
    const bool right = body.is_object() && body.size() == 2 && body.contains("text") && body["text"].is_string() &&
                       body.contains("own") && body["own"].is_boolean();
    if (!right) return tl::unexpected(Problems{{"bad_request", "", {{"what", "text, own"}}}});
    return salon::write_hand_note(context.world, {request.matches[1], body["own"].get<bool>() ? who->person.id : "",
                                                  body["text"].get<std::string>(), ""});
  });
  if (!written) return reply(response, written.error());
  reply_notes(context, *who, response);
}

}  // namespace

void add_hand_notes(httplib::Server& http, Context& context) {
  http.Get("/api/v1/hand-notes", [&context](const Request& request, Response& response) {
    if (refused_query(request, response, {})) return;
    const auto who = asking(context, request);
    if (!who) return reply(response, who.error());
    reply_notes(context, *who, response);
  });
  http.Put("/api/v1/hand-notes/([A-Za-z0-9_-]{1,80})",
           [&context](const Request& request, Response& response) { put_note(context, request, response); });
}

}  // namespace strandline::server
