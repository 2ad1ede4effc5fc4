#include <algorithm>
#include <map>
#include <set>

#include "figures.h"
#include "read_on.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/rights.h"

namespace strandline::salon {

Result<Retention> read_retention(const wire::Json& json) {
  auto read = Figures::read(json);
  if (!read) return tl::unexpected(read.error());
  Retention out;
  constexpr int least = 1, most = 100;
  read->take("client_years", out.client_years, least, most);
  read->take("card_years", out.card_years, least, most);
  if (!read->problems().empty()) return tl::unexpected(read->problems());
  return out;
}

Result<Retention> open_retention(const std::filesystem::path& knowledge) {
  constexpr std::size_t bytes_max = 1u << 20;
  const auto file = knowledge / "policy" / "retention.json";
  return read_file(file, bytes_max)
      .and_then([](const std::string& text) { return wire::parse(text); })
      .and_then(read_retention)
      .map_error([&](Problems problems) {
        for (Problem& p : problems) p.params["file"] = file.string();
        return problems;
      });
}

Result<std::vector<std::string>> due_for_erasure(World& world, const Retention& rules, const std::string& day) {
  auto out = last_seen_before(world, years_before(day, rules.client_years));
  if (!out) return out;
  std::set<std::string> came;
  std::map<std::string, std::string> copied;  // newest instant by client
  std::int64_t seen_from = 0, cards_from = 0;
  auto read = read_on(world, {.stream = "", .key = "", .kind = "client.card"}, cards_from,
                      [&](const store::Fact& fact, const wire::Json& body) {
                        if (body.is_null()) return;  // erased
                        std::string& newest = copied[fact.stream];
                        newest = std::max(newest, fact.made_at);
                      });
  // After the cards: a client who comes meanwhile is not due.
  if (read)
    read = read_on(world, {.stream = "", .key = "", .kind = "client.seen"}, seen_from,
                   [&](const store::Fact& fact, const wire::Json&) { came.insert(fact.stream); });
  if (!read) return tl::unexpected(read.error());
  const std::string before = years_before(day, rules.card_years);
  for (const auto& [client, at] : copied) {
    if (at < before && !came.contains(client)) out->push_back(client);
  }
  return out;
}

}  // namespace strandline::salon
