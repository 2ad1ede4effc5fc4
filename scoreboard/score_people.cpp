// people.search.ms: names of 100 000 clients searched by any part. journal.append.share: facts told one by one, each on
// disk before it is acknowledged, beside the same bytes appended to a plain file and synced, which is the least that
// any journal costs.
#include <fcntl.h>
#include <unistd.h>

#include <filesystem>

#include "measure.h"
#include "strandline/salon/clients.h"

namespace strandline::scoreboard {
namespace {

void must(bool done, const char* what) {
  if (done) return;
  std::fprintf(stderr, "%s failed\n", what);
  std::exit(1);
}

std::string name(int i) {
  constexpr const char* first[] = {"Ana", "Bea", "Cleo", "Dora", "Éva", "Fritzi", "Gül", "Hana", "Inès", "Jana"};
  constexpr const char* last[] = {"Invented", "Made-Up", "Nobody", "Fabel", "Inventada", "Fictive", "Erdacht"};
  return std::string(first[i % 10]) + ' ' + last[i / 10 % 7] + ' ' + std::to_string(i);
}

double search_ms(salon::World& world, int people) {
  constexpr int at_once = 500;
  for (int i = 0; i < people; i += at_once) {
    std::vector<store::NewFact> facts;
    for (int j = i; j < i + at_once; ++j) {
      const std::string id = "client-" + std::to_string(j);
      for (store::NewFact& fact :
           salon::Clients::facts_for(id, name(j), "visit-" + std::to_string(j), "2026-03-09", "2026-03-09T09:00:00Z"))
        facts.push_back(std::move(fact));
    }
    must(world.store->hand_in(facts, "", 0).has_value(), "telling names");
  }
  salon::Clients clients(world);
  must(clients.find("ana", 1).has_value(), "unlocking names");
  int turn = 0;
  constexpr const char* parts[] = {"eva", "99", "vent", "zzz", "a", "ines fab", "12345"};
  return median_ms(70, [&] { must(clients.find(parts[turn++ % 7]).has_value(), "searching"); });
}

constexpr int appends = 300;
const std::string body(400, 'x');

double own_ms(salon::World& world) {
  int n = 0;
  return median_ms(appends, [&] {
    must(world.store
             ->append({.id = "append-" + std::to_string(++n),
                       .stream = "v",
                       .after_seq = store::NewFact::at_the_end,
                       .made_at = "2026-03-09T09:00:00Z",
                       .kind = "k",
                       .body = "{\"x\":\"" + body + "\"}",
                       .key = "v"})
             .has_value(),
         "appending");
  });
}

double plain_ms(const std::string& path) {
  const int file = ::open(path.c_str(), O_CREAT | O_WRONLY | O_APPEND | O_CLOEXEC, 0600);
  const double ms = median_ms(appends, [&] {
    must(::write(file, body.data(), body.size()) == static_cast<ssize_t>(body.size()) && ::fdatasync(file) == 0,
         "writing");
  });
  ::close(file);
  return ms;
}

}  // namespace
}  // namespace strandline::scoreboard

int main() {
  using namespace strandline;
  const auto folder = std::filesystem::current_path() / ("score-people-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const std::string db = folder / "salon.sqlite";
  constexpr int people = 100000;
  double search = 0, own = 0, plain = 0;
  {
    scoreboard::must(salon::make_salon(db, [](salon::World&) { return Result<void>(); }).has_value(), "making");
    auto world = salon::real_world(db);
    scoreboard::must(world.has_value(), "opening");
    own = scoreboard::own_ms(*world);
    plain = scoreboard::plain_ms(folder / "plain");
    search = scoreboard::search_ms(*world, people);
  }
  std::filesystem::remove_all(folder);
  scoreboard::print({{"people.search.ms", search, "ms",
                      "100 000 names, seven parts in turn, 50 lines each, median of 70; held to 20"},
                     {"journal.append.share", plain / own, "",
                      "median of 300 single durable facts beside as many plain writes of 400 bytes, each synced"}});
}
