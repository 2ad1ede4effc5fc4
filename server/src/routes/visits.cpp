#include "context.h"
#include "of_visits.h"

namespace strandline::server {

namespace {

// What is told of a visit to somebody who does not work on hair.
wire::Json without_health(wire::Json document) {
  for (const char* key : {"skin_test", "test", "answers"}) document.erase(key);
  if (!document.contains("head") || !document["head"].contains("areas")) return document;
  for (wire::Json& area : document["head"]["areas"])
    for (const char* key : {"scalp", "loss"}) area.erase(key);
  return document;
}

void get_visit(Context& context, const httplib::Request& request, httplib::Response& response) {
  const auto who = asking(context, request);
  if (!who) return reply(response, who.error());
  auto saved = salon::open_saved(context.world, request.matches[1]);
  if (saved) {
    if (auto kept = context.people.opened_visit(*who, saved->summary.id); !kept) return reply(response, kept.error());
    if (!(who->person.roles & salon::opens_health)) saved->document = without_health(std::move(saved->document));
  }
  reply_saved(response, saved);
}

// What was weighed leaves the stock. The visit is kept whatever happens here, and the next save of it books what this
// one could not.
void book(Context& context, const httplib::Request& request, const Result<salon::SavedVisit>& saved) {
  if (!saved) return;
  const auto booked = asking(context, request).and_then([&](const salon::Who& who) {
    return context.stock.book(saved->summary.id, saved->document, who.person.id);
  });
  if (!booked && context.tell) context.tell(booked.error());
}

void get_visits(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {"cursor", "find", "client", "limit"})) return;
  salon::VisitsAsked asked{.cursor = request.get_param_value("cursor"),
                           .find = request.get_param_value("find"),
                           .client = request.get_param_value("client")};
  asked.limit = limit_of(request, asked.limit);
  if (const auto told = names_opened(context, request); !told) return reply(response, told.error());
  reply_with(response, salon::list_visits(context.world, asked), [](const salon::VisitsPage& page) {
    wire::Json out = wire::Json::array();
    for (const salon::VisitSummary& s : page.visits) out.push_back(json_of(s));
    wire::Json answer{{"schema", "strandline.visits/1"}, {"visits", std::move(out)}};
    if (!page.next.empty()) answer["next"] = page.next;
    return answer;
  });
}

void post_visit(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {"entry", "person"})) return;
  const std::string person = request.get_param_value("person");
  if (!person.empty()) {
    if (const auto known = context.clients.open(person); !known) return reply(response, known.error());
  }
  const auto saved = wire::parse(request.body).and_then([&](const wire::Json& document) {
    return salon::save_new(context.world, document, context.sources, request.get_param_value("entry"), person);
  });
  book(context, request, saved);
  if (saved) response.set_header("Location", "/api/v1/visits/" + saved->summary.id);
  reply_saved(response, saved, 201);
}

void put_visit(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {"entry"})) return;
  const auto seen = whole(request.get_header_value("If-Match"));
  if (!seen) return reply(response, Problems{{"seq_missing", "", {}}});
  const auto saved = wire::parse(request.body).and_then([&](const wire::Json& document) {
    return salon::save_change(context.world, request.matches[1], *seen, document, context.sources,
                              request.get_param_value("entry"));
  });
  book(context, request, saved);
  reply_saved(response, saved);
}

void get_changes(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {"after"})) return;
  const auto after =
      request.has_param("after") ? whole(request.get_param_value("after")) : std::optional<std::int64_t>(0);
  if (!after) return reply(response, Problems{{"bad_request", "", {}}});
  reply_with(response, salon::changes(context.world, *after), [](const std::vector<salon::Change>& list) {
    wire::Json out = wire::Json::array();
    for (const salon::Change& c : list) {
      out.push_back({{"store_seq", c.store_seq},
                     {"visit_id", c.visit_id},
                     {"seq", c.seq},
                     {"made_at", c.made_at},
                     {"kind", c.kind}});
    }
    return wire::Json{{"schema", "strandline.changes/1"}, {"changes", std::move(out)}};
  });
}

}  // namespace

void add_visits(httplib::Server& http, Context& context) {
  using httplib::Request, httplib::Response;
  const char* all = "/api/v1/visits";
  http.Get(all, [&](const Request& request, Response& response) { get_visits(context, request, response); });
  http.Post(all, [&](const Request& request, Response& response) { post_visit(context, request, response); });
  const char* one = "/api/v1/visits/([A-Za-z0-9_-]{1,80})";
  http.Get(one, [&](const Request& request, Response& response) { get_visit(context, request, response); });
  http.Put(one, [&](const Request& request, Response& response) { put_visit(context, request, response); });
  http.Get("/api/v1/changes",
           [&](const Request& request, Response& response) { get_changes(context, request, response); });
}

}  // namespace strandline::server
