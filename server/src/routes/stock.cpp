#include "context.h"
#include "of_visits.h"
#include "strandline/salon/prices.h"
#include "strandline/wire/stock_table.h"

namespace strandline::server {

namespace {

using httplib::Request, httplib::Response;

wire::Json json_of(const std::vector<wire::StockMove>& moves, const std::set<std::string>& undone = {}) {
  wire::Json out = wire::Json::array();
  for (const wire::StockMove& move : moves) {
    out.push_back(wire::stock_json(move));
    if (undone.contains(move.id)) out.back()["undone"] = true;
  }
  return out;
}

void get_stock(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"shelf"})) return;
  reply_with(response, context.stock.view(request.get_param_value("shelf")),
             [](const wire::StockView& view) { return wire::answer_json(view); });
}

void get_moves(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"shelf", "product", "visit", "cursor", "limit"})) return;
  constexpr int usual = 100;
  const auto asked = [&](const char* key) { return request.get_param_value(key); };
  const auto page =
      context.stock.moves(asked("shelf"), asked("product"), asked("visit"), asked("cursor"), limit_of(request, usual));
  reply_with(response, page, [](const salon::Stock::Page& p) {
    wire::Json out{{"schema", "strandline.stock-moves/1"}, {"moves", json_of(p.moves, p.undone)}};
    if (!p.next.empty()) out["next"] = p.next;
    return out;
  });
}

void post_moves(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"shelf", "entry"})) return;
  constexpr int created = 201;
  const auto kept = wire::parse(request.body).and_then([&](const wire::Json& asked) {
    return asking(context, request).and_then([&](const salon::Who& who) {
      return context.stock.move(request.get_param_value("shelf"), asked, request.get_param_value("entry"),
                                who.person.id);
    });
  });
  reply_with(
      response, kept,
      [](const std::vector<wire::StockMove>& moves) {
        return wire::Json{{"schema", "strandline.stock-moves/1"}, {"moves", json_of(moves)}};
      },
      created);
}

void get_report(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"shelf", "from", "until"})) return;
  const auto report = context.ended.visits().and_then([&](const std::vector<salon::EndedVisit>& visits) {
    return context.stock.report(request.get_param_value("shelf"), visits, request.get_param_value("from"),
                                request.get_param_value("until"));
  });
  reply_with(response, report, [](const wire::StockReport& r) { return wire::answer_json(r); });
}

// What is there, or every movement, as CSV.
void get_table(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"shelf", "moves"})) return;
  const std::string shelf = request.get_param_value("shelf");
  const auto told = [](std::string csv) {
    return wire::Json{{"schema", "strandline.stock-csv/1"}, {"csv", std::move(csv)}};
  };
  if (request.get_param_value("moves") == "all")
    return reply_with(response, context.stock.all(shelf),
                      [&](const std::vector<wire::StockMove>& moves) { return told(wire::print_moves(moves)); });
  reply_with(response, context.stock.view(shelf), [&](const wire::StockView& v) { return told(wire::print_stock(v)); });
}

// What is understood of a pasted list; nothing is kept.
void post_table(Context& context, const Request& request, Response& response) {
  if (refused_query(request, response, {"shelf"})) return;
  const auto read = wire::parse(request.body).and_then([&](const wire::Json& asked) {
    return context.stock.view(request.get_param_value("shelf")).and_then([&](const wire::StockView& view) {
      return wire::answer_stock_table(asked, view);
    });
  });
  reply_with(response, read, [](const wire::Json& lines) { return lines; });
}

wire::Json rules_json(const std::optional<wire::PriceRules>& rules) {
  wire::Json out{{"schema", "strandline.prices/1"}};
  if (rules) out["rules"] = wire::prices_json(*rules);
  return out;
}

void put_prices(Context& context, const Request& request, Response& response) {
  const auto kept = wire::parse(request.body).and_then([&](const wire::Json& asked) {
    return asking(context, request).and_then([&](const salon::Who& who) {
      return salon::set_prices(context.world, asked, who.person.id);
    });
  });
  reply_with(response, kept, [](const wire::PriceRules& rules) { return rules_json(rules); });
}

void post_price(Context& context, const Request& request, Response& response) {
  const auto price = wire::parse(request.body).and_then(wire::read_price_asked).and_then([&](const auto& asked) {
    return salon::prices(context.world).map([&](const std::optional<wire::PriceRules>& rules) {
      return rules ? salon::price_of(*rules, asked) : wire::Price{0, 0, "no_rules"};
    });
  });
  reply_with(response, price, [](const wire::Price& p) { return wire::price_json(p); });
}

}  // namespace

void add_stock(httplib::Server& http, Context& context) {
  http.Get("/api/v1/stock", [&](const Request& request, Response& response) { get_stock(context, request, response); });
  http.Get("/api/v1/stock/report",
           [&](const Request& request, Response& response) { get_report(context, request, response); });
  const char* table = "/api/v1/stock/table";
  http.Get(table, [&](const Request& request, Response& response) { get_table(context, request, response); });
  http.Post(table, [&](const Request& request, Response& response) { post_table(context, request, response); });
  http.Get("/api/v1/prices",
           [&](const Request&, Response& response) { reply_with(response, salon::prices(context.world), rules_json); });
  http.Put("/api/v1/prices",
           [&](const Request& request, Response& response) { put_prices(context, request, response); });
  http.Post("/api/v1/price",
            [&](const Request& request, Response& response) { post_price(context, request, response); });
  const char* moves = "/api/v1/stock/moves";
  http.Get(moves, [&](const Request& request, Response& response) { get_moves(context, request, response); });
  http.Post(moves, [&](const Request& request, Response& response) { post_moves(context, request, response); });
}

}  // namespace strandline::server
