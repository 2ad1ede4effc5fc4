#include "of_visits.h"
#include "strandline/wire/diary_fields.h"
#include "strandline/wire/encode.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

wire::Json json_of(const salon::DiaryLine& b) {
  wire::Json out{{"id", b.id}, {"seq", b.seq}, {"changed_at", b.changed_at}};
  if (!b.by.empty()) out["by"] = b.by;
  out["booking"] = wire::encode(b.booking);
  return out;
}

wire::Json lines(const std::vector<salon::DiaryLine>& list) {
  wire::Json out = wire::Json::array();
  for (const salon::DiaryLine& b : list) out.push_back(json_of(b));
  return out;
}

void get_diary(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"from", "until"})) return;
  if (const auto told = names_opened(context, request); !told) return reply(response, told.error());
  const auto found = context.diary.between(request.get_param_value("from"), request.get_param_value("until"));
  reply_with(response, found, [&](const std::vector<salon::DiaryLine>& list) {
    const salon::DiaryRules& rules = context.diary.rules();
    wire::Json out{{"schema", "strandline.diary/1"}, {"bookings", lines(list)}};
    out["rules"] = {{"opens_min", rules.opens_min},
                    {"closes_min", rules.closes_min},
                    {"grid_min", rules.grid_min},
                    {"test_lead_h", rules.test_lead_h},
                    {"test_min", rules.test_min}};
    return out;
  });
}

wire::Json one_line(const salon::DiaryLine& b) {
  wire::Json out{{"schema", "strandline.booking/1"}};
  out.update(json_of(b));
  return out;
}

void get_booking(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {})) return;
  if (const auto told = names_opened(context, request); !told) return reply(response, told.error());
  reply_with(response, context.diary.open(request.matches[1]), one_line);
}

void post_booking(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {})) return;
  const auto kept = wire::parse(request.body).and_then([&](const wire::Json& asked) {
    return asking(context, request).and_then([&](const salon::Who& who) {
      return context.diary.save(asked, who.person.id);
    });
  });
  reply_with(response, kept, one_line);
}

void get_free(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"from", "until", "minutes", "with"})) return;
  const auto minutes = whole(request.get_param_value("minutes"));
  const auto found =
      context.diary.free_starts({request.get_param_value("from"), request.get_param_value("until"),
                                 static_cast<double>(minutes.value_or(0)), request.get_param_value("with")});
  reply_with(response, found, [](const std::vector<salon::FreeStart>& list) {
    wire::Json out = wire::Json::array();
    for (const salon::FreeStart& f : list) out.push_back({{"starts_at", f.starts_at}, {"inside", f.inside}});
    return wire::Json{{"schema", "strandline.free-starts/1"}, {"starts", std::move(out)}};
  });
}

void get_tests(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {})) return;
  if (const auto told = names_opened(context, request); !told) return reply(response, told.error());
  reply_with(response, context.diary.tests_due(), [](const std::vector<salon::DueTest>& list) {
    wire::Json out = wire::Json::array();
    for (const salon::DueTest& t : list) {
      out.push_back({{"due", t.due == salon::TestDue::to_make ? "to_make" : "to_read"},
                     {"since", t.since},
                     {"colour", t.colour},
                     {"line", json_of(t.booked)}});
    }
    return wire::Json{{"schema", "strandline.tests-due/1"}, {"tests", std::move(out)}};
  });
}

void get_due(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"day"})) return;
  if (const auto told = names_opened(context, request); !told) return reply(response, told.error());
  constexpr std::size_t most = 100;
  const auto found =
      context.diary.people_due(request.get_param_value("day"))
          .and_then([&](const std::vector<salon::DuePerson>& list) -> Result<wire::Json> {
            wire::Json out = wire::Json::array();
            for (const salon::DuePerson& p : list) {
              if (out.size() == most) break;
              const auto record = context.clients.open(p.person);
              if (!record && record.error().front().code == "client_not_found") continue;
              if (!record) return tl::unexpected(record.error());
              out.push_back({{"person", p.person}, {"name", record->client.name}, {"due", p.due}, {"visit", p.visit}});
            }
            return out;
          });
  reply_with(response, found,
             [](const wire::Json& people) { return wire::Json{{"schema", "strandline.due/1"}, {"people", people}}; });
}

}  // namespace

void add_diary(httplib::Server& http, Context& context) {
  const auto get = [&](const char* path, void (*answer)(Context&, const Request&, Response&)) {
    http.Get(path, [&context, answer](const Request& q, Response& r) { answer(context, q, r); });
  };
  get("/api/v1/diary", get_diary);
  get("/api/v1/diary/free", get_free);
  get("/api/v1/diary/tests", get_tests);
  get("/api/v1/diary/due", get_due);
  get("/api/v1/bookings/([A-Za-z0-9_-]{1,80})", get_booking);
  http.Post("/api/v1/bookings", [&context](const Request& q, Response& r) { post_booking(context, q, r); });
}

}  // namespace strandline::server
