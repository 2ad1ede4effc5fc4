#include "body.h"
#include "of_visits.h"
#include "strandline/salon/rights.h"

namespace strandline::server {

namespace {

wire::Json json_of(const salon::ToldFact& f) {
  wire::Json out{{"store_seq", f.store_seq}, {"id", f.id},     {"visit_id", f.visit_id}, {"seq", f.seq},
                 {"made_at", f.made_at},     {"kind", f.kind}, {"version", f.version}};
  if (!f.person.empty()) out["person"] = f.person;
  if (!f.by.empty()) out["by"] = f.by;
  if (f.erased)
    out["erased"] = true;
  else
    out["body"] = f.body;
  return out;
}

wire::Json json_of(const salon::ClientLine& c) {
  return {
      {"id", c.id}, {"name", c.name}, {"visits", c.visits}, {"last_visit", c.last_visit}, {"last_date", c.last_date}};
}

void post_fact(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {})) return;
  const auto kept = wire::parse(request.body).and_then([&](const wire::Json& told) {
    return asking(context, request).and_then([&](const salon::Who& who) {
      return salon::tell(context.world, request.matches[1], told, who.person.id);
    });
  });
  reply_with(
      response, kept,
      [](const salon::ToldFact& f) {
        wire::Json out{{"schema", "strandline.fact/1"}};
        out.update(json_of(f));
        return out;
      },
      201);
}

void get_facts(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {"cursor", "limit"})) return;
  constexpr int usual = 200;
  const std::string visit = request.matches[1];
  const auto told =
      asking(context, request).and_then([&](const salon::Who& who) { return context.people.opened_visit(who, visit); });
  if (!told) return reply(response, told.error());
  const auto page = salon::facts_of(context.world, visit, request.get_param_value("cursor"), limit_of(request, usual));
  reply_with(response, page, [](const salon::FactsPage& p) {
    wire::Json facts = wire::Json::array();
    for (const salon::ToldFact& f : p.facts) facts.push_back(json_of(f));
    wire::Json out{{"schema", "strandline.facts/1"}, {"facts", std::move(facts)}};
    if (!p.next.empty()) out["next"] = p.next;
    return out;
  });
}

void post_hand_in(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {})) return;
  const auto ended = wire::parse(request.body).and_then([&](const wire::Json& asked) {
    return asking(context, request).and_then([&](const salon::Who& who) {
      return salon::hand_in(context.world, context.clients, request.matches[1], asked, who.person.id, &context.stock);
    });
  });
  reply_saved(response, ended);
}

void get_clients(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {"find", "limit"})) return;
  constexpr int usual = 50;
  if (const auto told = names_opened(context, request); !told) return reply(response, told.error());
  const auto found = context.clients.find(request.get_param_value("find"), limit_of(request, usual));
  reply_with(response, found, [](const std::vector<salon::ClientLine>& list) {
    wire::Json out = wire::Json::array();
    for (const salon::ClientLine& c : list) out.push_back(json_of(c));
    return wire::Json{{"schema", "strandline.clients/1"}, {"clients", std::move(out)}};
  });
}

void get_client(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {})) return;
  if (const auto told = names_opened(context, request); !told) return reply(response, told.error());
  const auto who = asking(context, request);
  if (!who) return reply(response, who.error());
  const auto visits = context.ended.visits();
  if (!visits) return reply(response, visits.error());
  reply_with(response, context.clients.open(request.matches[1]), [&](const salon::ClientRecord& record) {
    wire::Json out{{"schema", "strandline.client/1"}};
    out.update(json_of(record.client));
    // For whoever asks: their hand and this head.
    const auto learned = salon::mix_factor(*visits, record.client.id, who->person.id, context.house.amounts);
    out["mix_factor"] = learned.factor, out["mix_visits"] = learned.visits;
    wire::Json list = wire::Json::array();
    for (const salon::ClientVisit& v : record.visits)
      list.push_back({{"visit_id", v.visit_id}, {"date", v.date}, {"handed_in_at", v.handed_in_at}});
    out["history"] = std::move(list);
    out["cards"] = wire::Json::array();
    for (const salon::ClientCard& c : record.cards)
      out["cards"].push_back({{"date", c.date}, {"text", c.text}, {"contact", c.contact}, {"kept_at", c.kept_at}});
    return out;
  });
}

void get_everything(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {})) return;
  const auto all = asking(context, request).and_then([&](const salon::Who& who) {
    return salon::everything_of(context.world, context.clients, request.matches[1])
        .and_then([&](const wire::Json& everything) -> Result<wire::Json> {
          for (const std::string& visit : salon::visits_in(everything)) {
            if (auto told = context.people.opened_visit(who, visit); !told) return tl::unexpected(told.error());
          }
          return everything;
        });
  });
  reply_with(response, all, [](const wire::Json& everything) { return everything; });
}

// An owner who signed in with the passphrase, and says whom by name.
void post_erase(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {})) return;
  const std::string client = request.matches[1];
  const auto erased = asking(context, request).and_then([&](const salon::Who& who) {
    return texts_of(request, {"name"}).and_then([&](const Texts& t) -> Result<void> {
      if (who.by_pin) return tl::unexpected(Problems{{"passphrase_needed", "", {}}});
      const auto record = context.clients.open(client);
      if (!record) return tl::unexpected(record.error());
      if (record->client.name != t.at("name")) return tl::unexpected(Problems{{"another_name", "/name", {}}});
      return salon::erase_client(context.world, context.clients, client, who.person.id);
    });
  });
  if (!erased) return reply(response, erased.error());
  reply(response, wire::Json{{"schema", "strandline.done/1"}, {"done", true}});
}

// {"clients": [{"id", "name", "date"?, "text"?, "contact"?}]}
Result<std::vector<salon::NewClient>> new_clients(const wire::Json& asked) {
  const auto list = asked.is_object() ? asked.find("clients") : asked.end();
  if (!asked.is_object() || list == asked.end() || !list->is_array())
    return tl::unexpected(Problems{{"missing_key", "", {{"key", "clients"}}}});
  constexpr std::size_t longest = 4000;
  std::vector<salon::NewClient> out(list->size());
  Problems problems;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const wire::Json& one = (*list)[i];
    const std::string path = wire::pointer("/clients", i);
    if (!one.is_object()) return tl::unexpected(Problems{{"wrong_type", path, {{"expected", "object"}}}});
    for (const auto& [key, value] : one.items()) {
      std::string* into = key == "id"        ? &out[i].id
                          : key == "name"    ? &out[i].name
                          : key == "date"    ? &out[i].date
                          : key == "text"    ? &out[i].text
                          : key == "contact" ? &out[i].contact
                                             : nullptr;
      const std::string place = wire::pointer(path, key);
      if (into == nullptr)
        problems.push_back({"unknown_key", place, {{"key", key}}});
      else if (!value.is_string())
        problems.push_back({"wrong_type", place, {{"expected", "text"}}});
      else if (value.get_ref<const std::string&>().size() > longest)
        problems.push_back({"too_long", place, {{"max", std::to_string(longest)}}});
      else
        *into = value.get<std::string>();
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

void post_clients(Context& context, const httplib::Request& request, httplib::Response& response) {
  if (refused_query(request, response, {})) return;
  const auto added =
      wire::parse(request.body).and_then(new_clients).and_then([&](const std::vector<salon::NewClient>& list) {
        return asking(context, request).and_then([&](const salon::Who& who) {
          return context.clients.add(list, who.person.id);
        });
      });
  constexpr int created = 201;
  reply_with(
      response, added,
      [](const salon::AddedClients& done) {
        return wire::Json{{"schema", "strandline.clients-added/1"}, {"added", done.added}, {"known", done.known}};
      },
      created);
}

}  // namespace

void add_facts(httplib::Server& http, Context& context) {
  using httplib::Request, httplib::Response;
  const char* facts = "/api/v1/visits/([A-Za-z0-9_-]{1,80})/facts";
  http.Get(facts, [&](const Request& request, Response& response) { get_facts(context, request, response); });
  http.Post(facts, [&](const Request& request, Response& response) { post_fact(context, request, response); });
  http.Post("/api/v1/visits/([A-Za-z0-9_-]{1,80})/hand-in",
            [&](const Request& request, Response& response) { post_hand_in(context, request, response); });
  http.Get("/api/v1/clients",
           [&](const Request& request, Response& response) { get_clients(context, request, response); });
  http.Post("/api/v1/clients",
            [&](const Request& request, Response& response) { post_clients(context, request, response); });
  http.Get("/api/v1/clients/([A-Za-z0-9_-]{1,80})",
           [&](const Request& request, Response& response) { get_client(context, request, response); });
  http.Get("/api/v1/clients/([A-Za-z0-9_-]{1,80})/everything",
           [&](const Request& request, Response& response) { get_everything(context, request, response); });
  http.Post("/api/v1/clients/([A-Za-z0-9_-]{1,80})/erase",
            [&](const Request& request, Response& response) { post_erase(context, request, response); });
}

}  // namespace strandline::server
