#include "strandline/salon/verbs.h"

#include <chrono>
#include <optional>
#include <set>

#include "context.h"
#include "reply.h"

namespace strandline::server {

namespace {

// One of the places for searches, held as long as this lives; waits for it as long as the client does.
class SearchPlace {
 public:
  SearchPlace(Context& context, const httplib::Request& request) : context_(context) {
    constexpr std::chrono::milliseconds look_again{200};
    while (!(held_ = context_.searches.try_acquire_for(look_again)) && !client_gone(request)) {
    }
  }
  ~SearchPlace() {
    if (held_) context_.searches.release();
  }
  SearchPlace(const SearchPlace&) = delete;
  SearchPlace& operator=(const SearchPlace&) = delete;

 private:
  Context& context_;
  bool held_ = false;
};

bool searches(const std::string& verb) {
  static const std::set<std::string> all = {"formulate", "plan", "schedule", "review", "convert", "substitute"};
  return all.contains(verb);
}

}  // namespace

void add_verbs(httplib::Server& http, Context& context) {
  for (const std::string verb : {"assess", "aim", "predict", "formulate", "schedule", "plan", "reach", "fade", "grow",
                                 "what-if", "review", "convert", "substitute"}) {
    http.Post("/api/v1/" + verb, [verb, &context](const httplib::Request& request, httplib::Response& response) {
      // A client that has gone away stops its own search.
      const salon::Effort effort{context.workers.parallel_for(), [&request] { return client_gone(request); }};
      std::optional<SearchPlace> place;
      if (searches(verb)) place.emplace(context, request);
      const auto answer = wire::parse(request.body).and_then([&](const wire::Json& document) {
        return salon::answer(verb, document, context.sources, effort,
                             {request.get_param_value("range"), request.get_param_value("product")});
      });
      reply_with(response, answer, [](const wire::Json& json) { return json; });
    });
  }
}

}  // namespace strandline::server
