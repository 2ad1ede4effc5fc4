#include "context.h"
#include "of_visits.h"
#include "strandline/wire/answer.h"
#include "strandline/wire/shelf_table.h"
#include "strandline/wire/words.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

wire::Json json_of(const salon::ShelfSummary& s) {
  return {{"id", s.id},
          {"seq", s.seq},
          {"name", s.name},
          {"title", s.title},
          {"saved_at", s.saved_at},
          {"ranges", s.ranges},
          {"products", s.products},
          {"invented", s.invented},
          {"chosen", s.chosen}};
}

void reply_saved(Response& response, const Result<salon::SavedShelf>& saved, int status = 200) {
  if (saved) response.set_header("ETag", '"' + std::to_string(saved->summary.seq) + '"');
  reply_with(
      response, saved,
      [](const salon::SavedShelf& s) {
        wire::Json out{{"schema", "strandline.saved-shelf/1"}};
        out.update(json_of(s.summary));
        out["entry"] = s.entry;
        out["empty"] = s.empty;
        out["gaps"] = wire::problems_json(s.gaps)["problems"];
        out["document"] = s.document;
        return out;
      },
      status);
}

void get_shelves(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {})) return;
  reply_with(response, context.shelves.list(), [](const std::vector<salon::ShelfSummary>& list) {
    wire::Json out = wire::Json::array();
    for (const salon::ShelfSummary& s : list) out.push_back(json_of(s));
    return wire::Json{{"schema", "strandline.shelves/1"}, {"shelves", std::move(out)}};
  });
}

void post_shelf(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"entry"})) return;
  constexpr int created = 201;
  const auto saved = wire::parse(request.body).and_then([&](const wire::Json& document) {
    return context.shelves.save_new(document, request.get_param_value("entry"));
  });
  reply_saved(response, saved, created);
}

void put_shelf(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"entry"})) return;
  const auto seen = whole(request.get_header_value("If-Match"));
  if (!seen) return reply(response, Problems{{"seq_missing", "", {}}});
  reply_saved(response, wire::parse(request.body).and_then([&](const wire::Json& document) {
    return context.shelves.save_change(request.matches[1], *seen, document, request.get_param_value("entry"));
  }));
}

// {"product", "empty"}
void post_tube(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"entry"})) return;
  reply_saved(response, wire::parse(request.body).and_then([&](const wire::Json& body) -> Result<salon::SavedShelf> {
    const bool right = body.is_object() && body.size() == 2 && body.contains("product") &&
                       body["product"].is_string() && body.contains("empty") && body["empty"].is_boolean();
    if (!right) return tl::unexpected(Problems{{"bad_request", "", {{"what", "product, empty"}}}});
    return context.shelves.set_empty(request.matches[1], body["product"].get<std::string>(), body["empty"].get<bool>(),
                                     request.get_param_value("entry"));
  }));
}

void get_history(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {})) return;
  reply_with(response, context.shelves.history(request.matches[1]), [](const std::vector<salon::ShelfVersion>& list) {
    wire::Json out = wire::Json::array();
    for (const salon::ShelfVersion& v : list) {
      out.push_back({{"seq", v.seq},
                     {"name", v.name},
                     {"saved_at", v.saved_at},
                     {"ranges", v.ranges},
                     {"products", v.products},
                     {"added", v.added},
                     {"removed", v.removed},
                     {"changed", v.changed}});
    }
    return wire::Json{{"schema", "strandline.shelf-history/1"}, {"versions", std::move(out)}};
  });
}

void post_choice(Context& context, const Request& request, Response& response) {
  const auto chosen = wire::parse(request.body).and_then([&](const wire::Json& body) -> Result<void> {
    if (!body.is_object() || body.size() != 1 || !body.contains("shelf") || !body["shelf"].is_string())
      return tl::unexpected(Problems{{"bad_request", "", {{"what", "shelf"}}}});
    return context.shelves.choose(body["shelf"].get<std::string>());
  });
  if (!chosen) return reply(response, chosen.error());
  get_shelves(context, request, response);
}

}  // namespace

void add_shelf(httplib::Server& http, Context& context) {
  http.Get("/api/v1/shelf", [&context](const Request& request, Response& response) {
    if (refused_query(request, response, {"name"})) return;
    reply_with(response, context.shelves.view(request.get_param_value("name")),
               [](const wire::ShelfAnswer& shelf) { return wire::answer_json(shelf); });
  });
  http.Post("/api/v1/shelf/read", [](const Request& request, Response& response) {
    reply_with(response, wire::parse(request.body).and_then(wire::answer_table), [](const wire::Json& j) { return j; });
  });
  http.Get("/api/v1/shelf/classes", [&context](const Request&, Response& response) {
    reply(response, wire::Json{{"schema", "strandline.classes/1"}, {"document", context.house.classes}});
  });
  http.Post("/api/v1/shelf/choose",
            [&context](const Request& request, Response& response) { post_choice(context, request, response); });
  const char* all = "/api/v1/shelves";
  http.Get(all, [&](const Request& request, Response& response) { get_shelves(context, request, response); });
  http.Post(all, [&](const Request& request, Response& response) { post_shelf(context, request, response); });
  const std::string one = "/api/v1/shelves/([A-Za-z0-9_-]{1,40})";
  http.Get(one, [&](const Request& request, Response& response) {
    if (refused_query(request, response, {"version"})) return;
    const std::string version = request.get_param_value("version"), id = request.matches[1];
    reply_saved(response, context.shelves.open_shelf(version.empty() ? id : id + '@' + version));
  });
  http.Put(one, [&](const Request& request, Response& response) { put_shelf(context, request, response); });
  http.Post(one + "/tubes", [&](const Request& request, Response& response) { post_tube(context, request, response); });
  http.Get(one + "/history",
           [&](const Request& request, Response& response) { get_history(context, request, response); });
  http.Get(one + "/table", [&context](const Request& request, Response& response) {
    if (refused_query(request, response, {"range"})) return;
    reply_with(response, context.shelves.open_shelf(request.matches[1]), [&](const salon::SavedShelf& s) {
      return wire::Json{{"schema", "strandline.shelf-table/1"},
                        {"csv", wire::print_table(s.document, request.get_param_value("range"))}};
    });
  });
  http.Get("/api/v1/levels",
           [](const Request&, Response& response) { reply(response, wire::answer_json(wire::levels_answer())); });
  http.Get("/api/v1/tones", [](const Request&, Response& response) {
    wire::Json words = wire::Json::array();
    for (const auto& [tone, word] : wire::Words<Tone>::list) words.push_back(std::string(word));
    reply(response, wire::Json{{"schema", "strandline.tones/1"}, {"tones", std::move(words)}});
  });
}

}  // namespace strandline::server
