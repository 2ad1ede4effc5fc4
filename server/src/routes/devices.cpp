#include "body.h"
#include "context.h"
#include "cookies.h"
#include "lan.h"
#include "reply.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

void post_invite(Context& context, const Request& request, Response& response) {
  const auto invited = asking(context, request).and_then([&](const salon::Who& who) -> Result<salon::Invitation> {
    if (const auto nothing = texts_of(request, {}); !nothing) return tl::unexpected(nothing.error());
    if (!context.leaf) return tl::unexpected(Problems{{"no_other_machines", "", {}}});
    return context.people.invite(who);
  });
  reply_with(response, invited, [&](const salon::Invitation& i) {
    wire::Json out{{"schema", "strandline.invitation/1"},
                   {"code", i.code},
                   {"minutes", i.minutes},
                   {"fingerprint", context.leaf->authority().fingerprint()},
                   {"addresses", wire::Json::array()}};
    for (const std::string& name : context.leaf->names())
      out["addresses"].push_back("https://" + host_of(name) + ':' + std::to_string(context.lan_port));
    return out;
  });
}

void post_redeem(Context& context, const Request& request, Response& response) {
  const auto paired = texts_of(request, {"code", "name"}).and_then([&](const Texts& t) {
    return context.people.redeem(t.at("code"), t.at("name"));
  });
  reply_paired(context, request, response, paired);
}

// What a device has to trust before the door opens without a warning: public by its nature.
void get_authority(const Context& context, Response& response) {
  if (!context.leaf) return reply(response, Problems{{"no_other_machines", "", {}}});
  response.set_header("Content-Disposition", "attachment; filename=\"salon-authority.crt\"");
  response.set_content(context.leaf->authority().pem(), "application/x-x509-ca-cert");
}

}  // namespace

void add_devices(httplib::Server& http, Context& context) {
  http.Post("/api/v1/devices/invite", [&](const Request& q, Response& r) { post_invite(context, q, r); });
  http.Post("/api/v1/door/redeem", [&](const Request& q, Response& r) { post_redeem(context, q, r); });
  http.Get("/api/v1/door/authority", [&](const Request&, Response& r) { get_authority(context, r); });
}

}  // namespace strandline::server
