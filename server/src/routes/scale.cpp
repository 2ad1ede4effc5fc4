#include <chrono>

#include "context.h"
#include "of_visits.h"
#include "reply.h"

namespace strandline::server {

namespace {

const char* word_of(ScaleState state) {
  switch (state) {
    case ScaleState::stable:
      return "stable";
    case ScaleState::moving:
      return "moving";
    case ScaleState::below_zero:
      return "below_zero";
    case ScaleState::overload:
      return "overload";
    case ScaleState::fault:
      return "fault";
  }
  return "fault";
}

}  // namespace

void add_scale(httplib::Server& http, Context& context) {
  http.Get("/api/v1/scale", [&context](const httplib::Request& request, httplib::Response& response) {
    if (refused_query(request, response, {"after"})) return;
    const auto after = whole(request.has_param("after") ? request.get_param_value("after") : "0");
    if (!after) return reply(response, Problems{{"bad_request", "", {}}});
    wire::Json out{{"schema", "strandline.scale/1"}, {"seq", 0}, {"state", "none"}, {"grams", 0}};
    if (!context.counter) return reply(response, out);
    // Held until the scale says something else; then the page asks again.
    constexpr std::chrono::milliseconds most{5000}, step{100};
    salon::Weighed now;
    for (auto waited = step; waited <= most; waited += step) {
      now = context.counter->next(*after, step);
      if (now.seq != *after || context.stopping || client_gone(request)) break;
    }
    out["seq"] = now.seq;
    out["state"] = now.why.empty() ? word_of(now.reading.state) : "away";
    out["grams"] = now.reading.grams;
    if (!now.why.empty()) out["problems"] = wire::problems_json(now.why)["problems"];
    reply(response, out);
  });
}

}  // namespace strandline::server
