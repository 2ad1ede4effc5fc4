// What results taught, taken out and in again; and measurement files read.
#include "learned_routes.h"
#include "of_visits.h"
#include "strandline/wire/card.h"
#include "strandline/wire/measured.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

constexpr const char* whose_words[] = {"salon", "colourist", "range", "person"};
constexpr const char* what_words[] = {"lift", "depth", "warmth", "natural", "white", "eye"};

wire::Json json_of(const learned::Factor& f) {
  return {{"whose", whose_words[static_cast<int>(f.whose)]},
          {"id", f.id},
          {"what", what_words[static_cast<int>(f.what)]},
          {"mean", f.mean},
          {"sd", f.sd},
          {"prior_sd", f.prior_sd}};
}

wire::Json json_of(const salon::LearnedResult& r) {
  return {{"result", r.result},
          {"visit", r.visit},
          {"person", r.person},
          {"colourist", r.colourist},
          {"at", r.at},
          {"zone", r.said.zone},
          {"ranges", r.said.ranges},
          {"measured", r.said.measured},
          {"untaught", r.said.untaught},
          {"expected", r.said.expected},
          {"low", r.said.low},
          {"high", r.said.high},
          {"seen", r.said.seen},
          {"set_aside", r.said.set_aside},
          {"without", r.without}};
}

// ?person=ID: of one client alone, and what is shared.
wire::Json lesson_json(const salon::Lesson& lesson, const std::string& person) {
  std::vector<learned::Factor> factors = person.empty() ? std::vector<learned::Factor>{} : lesson.model.factors(person);
  for (learned::Factor& f : lesson.model.factors()) factors.push_back(std::move(f));
  wire::Json out{{"schema", "strandline.learned/1"},
                 {"words", wire::problems_json(learned::in_words(factors))["problems"]},
                 {"factors", wire::Json::array()},
                 {"results", wire::Json::array()},
                 {"unread", lesson.unread.size()}};
  for (const learned::Factor& f : factors) out["factors"].push_back(json_of(f));
  for (const salon::LearnedResult& r : lesson.results)
    if (person.empty() || r.person == person) out["results"].push_back(json_of(r));
  return out;
}

void get_learned(salon::Learning& learning, const Request& request, Response& response) {
  if (refused_query(request, response, {"person"})) return;
  reply_with(response, learning.now(), [&](const std::shared_ptr<const salon::Lesson>& lesson) {
    return lesson_json(*lesson, request.get_param_value("person"));
  });
}

// {"without"}
void post_learned(Context& context, salon::Learning& learning, const Request& request, Response& response) {
  if (refused_query(request, response, {})) return;
  const auto done = wire::parse(request.body).and_then([&](const wire::Json& body) -> Result<void> {
    if (!body.is_object() || body.size() != 1 || !body.contains("without") || !body["without"].is_boolean())
      return tl::unexpected(Problems{{"bad_request", "", {{"what", "without"}}}});
    return asking(context, request).and_then([&](const salon::Who& who) {
      return learning.set_without(request.matches[1], body["without"].get<bool>(), who.person.id);
    });
  });
  if (!done) return reply(response, done.error());
  reply_with(response, learning.now(),
             [&](const std::shared_ptr<const salon::Lesson>& lesson) { return lesson_json(*lesson, ""); });
}

// A file's text, L*a*b* typed, or swatches for a shelf.
auto answers(Result<wire::Json> (*read)(const wire::Json&)) {
  return [read](const Request& request, Response& response) {
    if (refused_query(request, response, {})) return;
    reply_with(response, wire::parse(request.body).and_then(read), [](const wire::Json& json) { return json; });
  };
}

}  // namespace

void add_learned(httplib::Server& http, Context& context, salon::Learning& learning) {
  http.Get("/api/v1/learned", [&](const Request& q, Response& r) { get_learned(learning, q, r); });
  http.Post(R"(/api/v1/learned/([A-Za-z0-9_-]+))",
            [&](const Request& q, Response& r) { post_learned(context, learning, q, r); });
  http.Post("/api/v1/measure", answers(wire::answer_measured));
  http.Post("/api/v1/measure/photo", answers(wire::answer_card_photo));
  http.Post("/api/v1/measure/swatches", answers(wire::answer_swatches));
}

}  // namespace strandline::server
