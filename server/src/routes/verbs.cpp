#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "learned_routes.h"
#include "memory.h"
#include "reply.h"

namespace strandline::server {

namespace {

constexpr std::array verbs{"assess", "aim",  "predict", "formulate", "schedule", "plan",       "reach",
                           "fade",   "grow", "what-if", "review",    "convert",  "substitute", "replan"};
constexpr std::string_view verbs_at = "/api/v1/";

// Verbs that look at one colour of each zone and no scenario, or at a clock that has begun: nobody at the chair waits
// for others' searches then.
bool quick(std::string_view verb) { return verb == "assess" || verb == "aim" || verb == "replan"; }

// Heavy work at the desk, in its turn; given up when the client goes or the server stops.
Result<wire::Json> in_turn(Context& context, const httplib::Request& request, const std::string& verb,
                           const std::function<Result<wire::Json>(const salon::Effort&)>& work) {
  std::optional<Result<wire::Json>> answer;
  const auto end = context.desk.ask(
      verb,
      [&](const salon::Desk::Gone& unwanted) {
        answer = work({context.workers.parallel_for(), unwanted});
        give_memory_back();
      },
      [&] { return context.stopping || client_gone(request); });
  if (end == salon::Desk::End::full)
    return tl::unexpected(Problems{{"busy", "", {{"waiting", std::to_string(context.waiting_most)}}}});
  if (!answer) return tl::unexpected(Problems{{"given_up", "", {}}});
  return std::move(*answer);
}

// Whose visit it is: as asked, else whoever alone has the name of its client.
std::string person_of(Context& context, const httplib::Request& request, const wire::Json& document) {
  if (request.has_param("person")) return request.get_param_value("person");
  const auto name = document.find("client");
  if (name == document.end() || !name->is_string() || name->get<std::string>().empty()) return {};
  const auto found = context.clients.named(name->get<std::string>());
  return found && found->size() == 1 ? found->front().id : std::string();
}

// What results taught of them, for whoever asks.
Result<salon::Taught> taught(Context& context, salon::Learning& learning, const httplib::Request& request,
                             const wire::Json& document) {
  return asking(context, request).and_then([&](const salon::Who& who) {
    return learning.now().map([&](std::shared_ptr<const salon::Lesson> lesson) {
      return salon::Taught{std::move(lesson), person_of(context, request, document), who.person.id};
    });
  });
}

// What decides the answer, beside what the salon knew: see Answers.
std::string question(const httplib::Request& request, const std::string& verb, const wire::Json& document,
                     const salon::Taught& known) {
  return store::content_hash(
      wire::print(wire::Json::array({verb, document, request.get_param_value("range"),
                                     request.get_param_value("product"), known.person, known.colourist})));
}

// Whether a search was cut short: asked again it may find better.
bool cut_short(const std::string& answer) { return answer.find(R"("stopped":"cancelled")") != std::string::npos; }

}  // namespace

bool asks_only(std::string_view route) {
  return route.starts_with(verbs_at) && std::any_of(verbs.begin(), verbs.end(), [&](std::string_view verb) {
           return verb == route.substr(verbs_at.size());
         });
}

void add_verbs(httplib::Server& http, Context& context, salon::Learning& learning) {
  for (const std::string verb : verbs) {
    const auto answered = [verb, &context, &learning](const httplib::Request& request) -> Result<std::string> {
      const std::uint64_t changes = context.answers.changes();
      return wire::parse(request.body).and_then([&](const wire::Json& document) {
        return taught(context, learning, request, document).and_then([&](const salon::Taught& known) {
          const auto work = [&](const salon::Effort& effort) {
            return salon::answer(verb, document, context.sources, effort,
                                 {request.get_param_value("range"), request.get_param_value("product")}, known);
          };
          if (quick(verb)) return work({}).map([](const wire::Json& json) { return wire::print(json); });
          const std::string asked = question(request, verb, document, known);
          if (auto before = context.answers.find(asked)) {
            ++context.known;
            return Result<std::string>(std::move(*before));
          }
          return in_turn(context, request, verb, work).map([&](const wire::Json& json) {
            std::string answer = wire::print(json);
            if (!cut_short(answer)) context.answers.keep(asked, answer, changes);
            return answer;
          });
        });
      });
    };
    http.Post(std::string(verbs_at) + verb, [answered](const httplib::Request& request, httplib::Response& response) {
      const Result<std::string> answer = answered(request);
      if (!answer) return reply(response, answer.error());
      response.set_content(*answer, "application/json");
    });
  }
}

}  // namespace strandline::server
