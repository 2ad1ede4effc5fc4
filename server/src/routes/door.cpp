#include "body.h"
#include "context.h"
#include "cookies.h"
#include "people_json.h"
#include "reply.h"
#include "strandline/salon/founding.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

// The token in one of our cookies; "" where there is none.
std::string token_in(const Request& request, std::string_view name) {
  const std::string cookies = request.get_header_value("Cookie"), wanted = std::string(name) + '=';
  const std::size_t at = cookies.find(wanted);
  if (at == std::string::npos) return "";
  const std::size_t from = at + wanted.size();
  return cookies.substr(from, cookies.find(';', from) - from);
}

constexpr int at_once = -1, ok = 200;

void reply_signed_in(Context& context, const Request& request, Response& response, const Result<salon::SignedIn>& in,
                     int status = 200) {
  if (in) set_cookie(request, response, session_cookie, in->token, 0);
  reply_with(
      response, in,
      [&](const salon::SignedIn& s) {
        return wire::Json{{"schema", "strandline.signed-in/1"},
                          {"person", json_of(s.who.person)},
                          {"idle_minutes", context.house.doors.idle_minutes}};
      },
      status);
}

void reply_done(Response& response, const Result<void>& done) {
  if (!done) return reply(response, done.error());
  reply(response, wire::Json{{"schema", "strandline.done/1"}, {"done", true}});
}

void get_door(Context& context, const Request& request, Response& response) {
  const auto door = context.people.door(token_in(request, device_cookie));
  if (!door) return reply(response, door.error());
  wire::Json out{{"schema", "strandline.door/1"},
                 {"people", door->people},
                 {"fresh", door->fresh},
                 {"paired", door->paired},
                 {"elsewhere", encrypted(request)},
                 {"idle_minutes", context.house.doors.idle_minutes},
                 {"passphrase_signs", context.house.doors.passphrase_signs},
                 {"pin_digits", context.house.doors.pin_digits}};
  if (!door->zone.empty()) out["zone"] = door->zone;
  if (!door->shelf.empty()) out["shelf"] = door->shelf;
  if (door->paired) {
    out["may_come_in"] = wire::Json::array();
    for (const salon::Person& p : door->may_come_in) out["may_come_in"].push_back(json_of(p));
  }
  if (const auto who = asking(context, request); who && door->people) out["person"] = json_of(who->person);
  reply(response, out);
}

void post_found(Context& context, const Request& request, Response& response) {
  const auto founded = texts_of(request, {"name", "passphrase", "zone", "shelf"}, {"colours_hair", "shelf_title"})
                           .and_then([&](Texts t) -> Result<salon::SignedIn> {
                             const salon::Roles roles =
                                 salon::owner | (t["colours_hair"] == "yes" ? salon::colourist : 0);
                             const salon::Founding founding{t["name"], t["passphrase"],         roles,
                                                            t["zone"], context.house.policy.id, t["shelf"]};
                             return salon::found_salon(context.people, context.shelves, founding, t["shelf_title"]);
                           });
  reply_signed_in(context, request, response, founded, 201);
}

void post_sign_in(Context& context, const Request& request, Response& response) {
  const auto in =
      texts_of(request, {}, {"name", "person", "passphrase", "pin"}).and_then([&](Texts t) -> Result<salon::SignedIn> {
        if (t.contains("name") == t.contains("person") || t.contains("passphrase") == t.contains("pin"))
          return tl::unexpected(Problems{{"bad_request", "", {{"what", "name or person, passphrase or pin"}}}});
        return context.people.sign_in({t["name"], t["person"], t.contains("pin") ? t["pin"] : t["passphrase"],
                                       t.contains("pin"), token_in(request, device_cookie), request.remote_addr});
      });
  reply_signed_in(context, request, response, in);
}

// One's own things: `act` with who asks and what was sent.
using Act = std::function<Result<void>(const salon::Who&, const Texts&)>;
void own(Context& context, const Request& request, Response& response, std::initializer_list<std::string_view> needed,
         const Act& act) {
  reply_done(response, asking(context, request).and_then([&](const salon::Who& who) {
    return texts_of(request, needed).and_then([&](const Texts& t) { return act(who, t); });
  }));
}

void post_pair(Context& context, const Request& request, Response& response) {
  const auto paired = asking(context, request).and_then([&](const salon::Who& who) {
    return texts_of(request, {"name"}).and_then([&](const Texts& t) { return context.people.pair(who, t.at("name")); });
  });
  reply_paired(context, request, response, paired);
}

void post_words(Context& context, const Request& request, Response& response) {
  const auto words = asking(context, request).and_then([&](const salon::Who& who) {
    return texts_of(request, {"passphrase"}).and_then([&](const Texts& t) {
      return context.people.recovery_words(who, t.at("passphrase"), request.remote_addr);
    });
  });
  reply_with(response, words,
             [](const std::string& w) { return wire::Json{{"schema", "strandline.recovery-words/1"}, {"words", w}}; });
}

}  // namespace

void set_cookie(const Request& request, Response& response, std::string_view name, const std::string& token,
                int seconds) {
  std::string text = std::string(name) + '=' + token + "; Path=/; HttpOnly; SameSite=Strict";
  if (seconds != 0) text += "; Max-Age=" + std::to_string(std::max(0, seconds));
  if (encrypted(request)) text += "; Secure";
  response.set_header("Set-Cookie", text);
}

void reply_paired(Context& context, const Request& request, Response& response, const Result<salon::Paired>& paired) {
  constexpr int day_s = 86400;
  if (paired) set_cookie(request, response, device_cookie, paired->token, context.house.doors.device_days * day_s);
  reply_with(response, paired, [](const salon::Paired& p) {
    return wire::Json{{"schema", "strandline.paired/1"}, {"device", json_of(p.device)}};
  });
}

Result<std::string> device_asking(Context& context, const Request& request) {
  return context.people.device_of(token_in(request, device_cookie));
}

Result<salon::Who> asking(Context& context, const Request& request) {
  return context.people.who(token_in(request, session_cookie));
}

Result<void> names_opened(Context& context, const Request& request) {
  return asking(context, request).and_then([&](const salon::Who& who) { return context.people.opened_names(who); });
}

void add_door(httplib::Server& http, Context& context) {
  const auto post = [&](const char* path, void (*answer)(Context&, const Request&, Response&)) {
    http.Post(path, [&context, answer](const Request& q, Response& r) { answer(context, q, r); });
  };
  http.Get("/api/v1/door", [&context](const Request& q, Response& r) { get_door(context, q, r); });
  post("/api/v1/door/found", post_found);
  post("/api/v1/door/sign-in", post_sign_in);
  post("/api/v1/door/sign-out", [](Context& in, const Request& q, Response& r) {
    own(in, q, r, {}, [&](const salon::Who& who, const Texts&) { return in.people.sign_out(who); });
    if (r.status == ok) set_cookie(q, r, session_cookie, "gone", at_once);
  });
  post("/api/v1/door/passphrase", [](Context& in, const Request& q, Response& r) {
    own(in, q, r, {"now", "next"}, [&](const salon::Who& who, const Texts& t) {
      return in.people.change_passphrase(who, t.at("now"), t.at("next"), q.remote_addr);
    });
  });
  post("/api/v1/door/pin", [](Context& in, const Request& q, Response& r) {
    own(in, q, r, {"now", "pin"}, [&](const salon::Who& who, const Texts& t) {
      return in.people.change_pin(who, t.at("now"), t.at("pin"), q.remote_addr);
    });
  });
  post("/api/v1/door/pair", post_pair);
  post("/api/v1/door/recovery-words", post_words);
}

}  // namespace strandline::server
