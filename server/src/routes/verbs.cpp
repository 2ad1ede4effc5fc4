#include <optional>

#include "learned_routes.h"
#include "memory.h"
#include "reply.h"

namespace strandline::server {

namespace {

// Verbs that look at one colour of each zone and no scenario, or at a clock that has begun: nobody at the chair waits
// for others' searches then.
bool quick(const std::string& verb) { return verb == "assess" || verb == "aim" || verb == "replan"; }

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
    return tl::unexpected(Problems{{"busy", "", {{"waiting", std::to_string(Context::waiting_most)}}}});
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

}  // namespace

void add_verbs(httplib::Server& http, Context& context, salon::Learning& learning) {
  for (const std::string verb : {"assess", "aim", "predict", "formulate", "schedule", "plan", "reach", "fade", "grow",
                                 "what-if", "review", "convert", "substitute", "replan"}) {
    http.Post(
        "/api/v1/" + verb, [verb, &context, &learning](const httplib::Request& request, httplib::Response& response) {
          const auto answer = wire::parse(request.body).and_then([&](const wire::Json& document) {
            const auto work = [&](const salon::Effort& effort) {
              return taught(context, learning, request, document).and_then([&](const salon::Taught& known) {
                return salon::answer(verb, document, context.sources, effort,
                                     {request.get_param_value("range"), request.get_param_value("product")}, known);
              });
            };
            return quick(verb) ? work({}) : in_turn(context, request, verb, work);
          });
          reply_with(response, answer, [](const wire::Json& json) { return json; });
        });
  }
}

}  // namespace strandline::server
