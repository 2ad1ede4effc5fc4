// serve.rss.mb, serve.light.p99.ms: the server on loopback, and beside it what the same work costs where each question
// runs at once on its own thread with the C library's memory as it comes.
// Argument: seconds of plans, default 60 (300 for the five minutes that are held to ≤ 150 MB).
#include <httplib.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <thread>

#include "measure.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/verbs.h"
#include "strandline/salon/workers.h"
#include "strandline/server/server.h"

namespace strandline::scoreboard {
namespace {

using Clock = std::chrono::steady_clock;
constexpr int heavy_clients = 32;
constexpr double light_seconds = 15;
constexpr const char* visits[] = {"salt_and_pepper_two_tones", "my_own_bowls", "packets_and_regrowth",
                                  "two_levels_lighter", "coloured_lengths_lighter"};

double seconds_since(Clock::time_point begin) { return std::chrono::duration<double>(Clock::now() - begin).count(); }

std::string demo(const std::string& name) {
  std::ifstream in(salon::default_knowledge() / "demo" / "visits" / (name + ".json"));
  return {std::istreambuf_iterator<char>(in), {}};
}

double rss_mb() {
  std::ifstream in("/proc/self/statm");
  double size = 0, resident = 0;
  in >> size >> resident;
  return resident * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1e6;
}

// The rival: nobody waits, nothing is given back.
void serve_bare(httplib::Server& http, const salon::House& house, salon::Workers& workers) {
  constexpr int threads = 256;
  http.set_tcp_nodelay(true);
  http.new_task_queue = [] { return new httplib::ThreadPool(threads); };
  http.Get("/api/v1/health", [](const httplib::Request&, httplib::Response& r) { r.set_content("{}", "text/plain"); });
  http.Post("/api/v1/([a-z]+)", [&](const httplib::Request& request, httplib::Response& r) {
    const auto answer = wire::parse(request.body).and_then([&](const wire::Json& document) {
      return salon::answer(std::string(request.matches[1]), document, house.sources(), {workers.parallel_for()});
    });
    r.set_content(answer ? wire::print(*answer) : "", "application/json");
  });
}

struct Figures {
  double rss = 0, p99 = 0, plans = 0, asked = 0, failed = 0;
};

Figures measured(int port, double seconds) {
  Figures out;
  httplib::Client client("127.0.0.1", port);
  client.set_read_timeout(120);
  for (const auto begin = Clock::now(); seconds_since(begin) < seconds; ++out.plans) {
    const char* name = visits[static_cast<std::size_t>(out.plans) % std::size(visits)];
    const auto got = client.Post("/api/v1/plan", demo(name), "application/json");
    if (!got || got->status != 200) ++out.failed;
  }
  out.rss = rss_mb();
  std::atomic<bool> stop = false;
  std::vector<std::thread> crowd;
  for (int i = 0; i < heavy_clients; ++i)
    crowd.emplace_back([&] {
      httplib::Client own("127.0.0.1", port);
      own.set_read_timeout(120);
      while (!stop) (void)own.Post("/api/v1/reach", demo(visits[0]), "application/json");
    });
  std::vector<double> ms;
  for (const auto begin = Clock::now(); seconds_since(begin) < light_seconds;) {
    const auto asked = Clock::now();
    const auto got = ms.size() % 2 ? client.Get("/api/v1/health")
                                   : client.Post("/api/v1/assess", demo(visits[0]), "application/json");
    if (!got || got->status != 200) ++out.failed;
    ms.push_back(1000 * seconds_since(asked));
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
  }
  stop = true;
  for (std::thread& one : crowd) one.join();
  std::sort(ms.begin(), ms.end());
  out.asked = static_cast<double>(ms.size());
  out.p99 = ms[std::min(ms.size() - 1, static_cast<std::size_t>(std::ceil(0.99 * out.asked)))];
  return out;
}

// In a process of its own: what is set for memory holds for a whole process, and what was held stays.
Figures run(bool bare, double seconds) {
  std::array<int, 2> line{};
  if (pipe(line.data()) != 0) std::exit(1);
  const pid_t child = fork();
  if (child == 0) {
    auto house = salon::open_house({});
    auto world = salon::real_world(":memory:");
    if (!house || !world) _exit(1);
    Figures out;
    if (bare) {
      salon::Workers workers(2);
      httplib::Server http;
      serve_bare(http, *house, workers);
      const int port = http.bind_to_any_port("127.0.0.1");
      std::thread serving([&] { http.listen_after_bind(); });
      out = measured(port, seconds);
      http.stop();
      serving.join();
    } else {
      server::Server own({.port = 0, .web = {}, .allowed_hosts = {}}, std::move(*world), std::move(*house));
      const auto port = own.bind();
      if (!port) _exit(1);
      std::thread serving([&] { own.run(); });
      out = measured(*port, seconds);
      own.stop();
      serving.join();
    }
    _exit(write(line[1], &out, sizeof out) == sizeof out ? 0 : 1);
  }
  Figures out;
  const bool told = read(line[0], &out, sizeof out) == sizeof out;
  int status = 0;
  waitpid(child, &status, 0);
  if (!told || status != 0 || out.failed > 0) std::exit(1);
  return out;
}

}  // namespace
}  // namespace strandline::scoreboard

int main(int argc, char** argv) {
  using namespace strandline::scoreboard;
  const double seconds = argc > 1 ? std::atof(argv[1]) : 60;
  const Figures own = run(false, seconds), bare = run(true, seconds);
  const auto after = [seconds](const Figures& of) {
    return "server and one client in one process after " + std::to_string(static_cast<int>(of.plans)) + " plans in " +
           std::to_string(static_cast<int>(seconds)) + " s (five demo visits in turn)";
  };
  const std::string under =
      "health and assess in turn, 50 a second at most, while 32 clients ask for reach without pause, 15 s";
  print({{"serve.rss.mb", own.rss, "MB", after(own) + "; held to 150 after 300 s"},
         {"serve.rss.bare.mb", bare.rss, "MB", after(bare) + "; rival: memory as the C library keeps it"},
         {"serve.light.p99.ms", own.p99, "ms", under},
         {"serve.light.bare.p99.ms", bare.p99, "ms", under + "; rival: every question at once on its own thread"}});
}
