// whatif.ms: one changed gram over HTTP on loopback; its rival is the same verb called in process.
#include <httplib.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <thread>

#include "measure.h"
#include "strandline/salon/verbs.h"
#include "strandline/server/server.h"

int main() {
  using namespace strandline;
  auto house = salon::open_house({});
  if (!house) return 1;
  const auto text = salon::read_file(salon::default_knowledge() / "demo" / "visits" / "my_own_bowls.json", 1 << 22);
  if (!text) return 1;
  auto document = nlohmann::json::parse(*text);
  const auto in_process = [&, sources = house->sources()] {
    if (!salon::answer("what-if", document, sources, {})) std::exit(1);
  };
  const double direct = scoreboard::median_ms(15, in_process);

  auto world = salon::real_world(":memory:");
  if (!world) return 1;
  server::ServerOptions options;
  options.port = 0;
  server::Server server(options, std::move(*world), std::move(*house));
  const auto port = server.bind();
  if (!port) return 1;
  std::thread run([&] { server.run(); });
  httplib::Client client("127.0.0.1", *port);
  client.set_tcp_nodelay(true);
  client.set_keep_alive(true);
  bool fine = true;
  double grams = 20;
  const auto ask = [&] {
    document["bowls"][0]["parts"][0]["grams"] = grams = grams < 60 ? grams + 0.5 : 20;
    const auto answer = client.Post("/api/v1/what-if", document.dump(), "application/json");
    fine = fine && answer && answer->status == 200;
  };
  const double ms = scoreboard::median_ms(41, ask);
  // As a held gram asks first: few scenarios. The slowest of a hundred.
  document["options"]["scenarios"] = kSearchScenarios;
  constexpr size_t kTimes = 500;
  std::vector<double> quick;
  for (size_t i = 0; i < kTimes; ++i) quick.push_back(scoreboard::median_ms(1, ask));
  std::sort(quick.begin(), quick.end());
  server.stop();
  run.join();
  if (!fine) return 1;
  scoreboard::print({{"whatif.ms", ms, "ms", "median of 41, one changed gram, 1024 scenarios, HTTP on loopback"},
                     {"whatif.p99_64.ms", quick[kTimes * 99 / 100], "ms",
                      "99 % of 500 within, one changed gram, 64 scenarios, HTTP on loopback"},
                     {"whatif.door_ms", ms - direct, "ms", "what the door adds to the verb called in process"}});
}
