#include "body.h"
#include "context.h"
#include "people_json.h"
#include "reply.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

// "colourist,manager". Problem unknown_word.
Result<salon::Roles> roles_in(const std::string& list) {
  std::vector<std::string> words(1);
  for (const char c : list) {
    if (c == ',')
      words.emplace_back();
    else
      words.back() += c;
  }
  const auto roles = salon::roles_of(words);
  if (!roles) return tl::unexpected(Problems{{"unknown_role", "/roles", {{"word", list}}}});
  return *roles;
}

wire::Json json_of_team(const salon::Team& team) {
  wire::Json out{{"schema", "strandline.people/1"},
                 {"people", wire::Json::array()},
                 {"devices", wire::Json::array()},
                 {"sessions", wire::Json::array()}};
  for (const salon::Person& p : team.people) out["people"].push_back(json_of(p));
  for (const salon::Device& d : team.devices) out["devices"].push_back(json_of(d));
  for (const salon::Session& s : team.sessions)
    out["sessions"].push_back(
        {{"person", s.person}, {"device", s.device}, {"began_at", s.began_at}, {"pin", s.by_pin}});
  return out;
}

// After a change, and when asked: everybody, so that a page shows what is.
void reply_team(Context& context, Response& response, int status = 200) {
  reply_with(response, context.people.team(), json_of_team, status);
}

template <class Act>
void change(Context& context, const Request& request, Response& response,
            std::initializer_list<std::string_view> needed, const Act& act, int status = 200) {
  const auto who = asking(context, request);
  if (!who) return reply(response, who.error());
  const auto texts = texts_of(request, needed);
  if (!texts) return reply(response, texts.error());
  const auto done = act(*who, *texts);
  if (!done) return reply(response, done.error());
  reply_team(context, response, status);
}

}  // namespace

void add_people(httplib::Server& http, Context& context) {
  salon::People& people = context.people;
  http.Get("/api/v1/people", [&](const Request&, Response& response) { reply_team(context, response); });
  http.Post("/api/v1/people", [&](const Request& request, Response& response) {
    change(
        context, request, response, {"name", "roles", "passphrase"},
        [&](const salon::Who& who, const Texts& t) {
          return roles_in(t.at("roles")).and_then([&](salon::Roles roles) {
            return people.add(who, t.at("name"), roles, t.at("passphrase"));
          });
        },
        201);
  });
  http.Post("/api/v1/people/([A-Za-z0-9_-]{1,80})/roles", [&](const Request& request, Response& response) {
    change(context, request, response, {"roles"}, [&](const salon::Who& who, const Texts& t) {
      return roles_in(t.at("roles")).and_then([&](salon::Roles roles) {
        return people.set_roles(who, request.matches[1], roles);
      });
    });
  });
  http.Post("/api/v1/people/([A-Za-z0-9_-]{1,80})/reset", [&](const Request& request, Response& response) {
    change(context, request, response, {"passphrase"}, [&](const salon::Who& who, const Texts& t) {
      return people.reset(who, request.matches[1], t.at("passphrase"));
    });
  });
  http.Post("/api/v1/people/([A-Za-z0-9_-]{1,80})/revoke", [&](const Request& request, Response& response) {
    change(context, request, response, {},
           [&](const salon::Who& who, const Texts&) { return people.revoke(who, request.matches[1]); });
  });
  http.Post("/api/v1/people/([A-Za-z0-9_-]{1,80})/leave", [&](const Request& request, Response& response) {
    change(context, request, response, {},
           [&](const salon::Who& who, const Texts&) { return people.leave(who, request.matches[1]); });
  });
  http.Post("/api/v1/devices/([A-Za-z0-9_-]{1,80})/unpair", [&](const Request& request, Response& response) {
    change(context, request, response, {},
           [&](const salon::Who& who, const Texts&) { return people.unpair(who, request.matches[1]); });
  });
}

}  // namespace strandline::server
