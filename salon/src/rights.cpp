#include "strandline/salon/rights.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <map>
#include <set>

#include "of_store.h"

namespace strandline::salon {

namespace {

// All facts that are asked for, by their place in the journal.
Result<void> take_all(World& world, store::FactsAsked asked, std::map<std::int64_t, store::Fact>& into) {
  asked.after = 0, asked.limit = 200;
  for (;;) {
    const auto page = world.store->facts(asked);
    if (!page) return problem_of(page.error());
    for (const store::Fact& fact : *page) into.emplace(asked.after = fact.store_seq, fact);
    if (page->size() < static_cast<std::size_t>(asked.limit)) return {};
  }
}

// Drafts that are theirs: by id, or by a name that nobody else bears.
Result<std::vector<store::VisitRow>> drafts_of(World& world, Clients& clients, const ClientLine& client) {
  const auto same = clients.named(client.name);
  if (!same) return tl::unexpected(same.error());
  std::vector<store::VisitRow> out;
  for (const bool by_name : {false, true}) {
    if (by_name && (same->size() != 1 || client.name.empty())) continue;
    store::VisitsAsked asked;
    (by_name ? asked.client : asked.person) = by_name ? client.name : client.id;
    for (bool more = true; more;) {
      auto page = world.store->visits(asked);
      if (!page) return problem_of(page.error());
      more = page->size() == static_cast<std::size_t>(asked.limit);
      if (more) asked.before = page->back().store_seq;
      for (store::VisitRow& row : *page) {
        if (row.person.empty() == by_name) out.push_back(std::move(row));
      }
    }
  }
  return out;
}

// What seals something of theirs beside their own key: visits.
Result<std::set<std::string>> visits_of(World& world, const ClientRecord& record,
                                        const std::vector<store::VisitRow>& drafts) {
  std::set<std::string> out;
  for (const ClientVisit& visit : record.visits) out.insert(visit.visit_id);
  for (const store::VisitRow& draft : drafts) out.insert(draft.visit_id);
  std::map<std::int64_t, store::Fact> own;
  if (auto read = take_all(world, {.stream = {}, .key = record.client.id, .kind = {}}, own); !read)
    return tl::unexpected(read.error());
  for (const auto& [seq, fact] : own) {
    if (fact.stream != record.client.id) out.insert(fact.stream);
  }
  return out;
}

}  // namespace

Result<wire::Json> everything_of(World& world, Clients& clients, const std::string& client) {
  const auto record = clients.open(client);
  if (!record) return tl::unexpected(record.error());
  const auto drafts = drafts_of(world, clients, record->client);
  if (!drafts) return tl::unexpected(drafts.error());
  const auto visits = visits_of(world, *record, *drafts);
  if (!visits) return tl::unexpected(visits.error());
  std::map<std::int64_t, store::Fact> facts;
  auto read = take_all(world, {.stream = {}, .key = client, .kind = {}}, facts);
  for (auto at = visits->begin(); read && at != visits->end(); ++at)
    read = take_all(world, {.stream = *at, .key = {}, .kind = {}}, facts);
  if (!read) return tl::unexpected(read.error());

  wire::Json out{{"schema", "strandline.everything/1"},
                 {"client", {{"id", record->client.id}, {"name", record->client.name}}},
                 {"made_at", world.now()},
                 {"facts", wire::Json::array()},
                 {"drafts", wire::Json::array()}};
  for (const auto& [seq, fact] : facts) {
    wire::Json one{{"store_seq", seq},        {"id", fact.id},     {"of", fact.stream},
                   {"made_at", fact.made_at}, {"kind", fact.kind}, {"version", fact.version}};
    const auto about = wire::parse(fact.about);
    if (about && about->contains("by")) one["by"] = (*about)["by"];
    if (const auto body = wire::parse(fact.body); body && !fact.closed) one["body"] = *body;
    out["facts"].push_back(std::move(one));
  }
  for (const store::VisitRow& row : *drafts) {
    const auto whole = world.store->visit(row.visit_id);
    if (!whole) return problem_of(whole.error());
    if (!*whole) continue;  // handed in meanwhile
    const auto document = wire::parse((*whole)->body);
    if (!document) return problem_of({"store_damaged", "visit " + row.visit_id, row.store_seq});
    out["drafts"].push_back({{"visit", row.visit_id},
                             {"opened_at", row.opened_at},
                             {"changed_at", row.changed_at},
                             {"document", *document}});
  }
  return out;
}

std::vector<std::string> visits_in(const wire::Json& everything) {
  std::set<std::string> out;
  const std::string client = everything["client"]["id"];
  for (const wire::Json& fact : everything["facts"]) {
    if (fact["of"] != client) out.insert(fact["of"].get<std::string>());
  }
  for (const wire::Json& draft : everything["drafts"]) out.insert(draft["visit"].get<std::string>());
  return {out.begin(), out.end()};
}

Result<void> erase_client(World& world, Clients& clients, const std::string& client, const std::string& by) {
  const auto record = clients.open(client);
  if (!record) return tl::unexpected(record.error());
  const auto drafts = drafts_of(world, clients, record->client);
  if (!drafts) return tl::unexpected(drafts.error());
  const auto visits = visits_of(world, *record, *drafts);
  if (!visits) return tl::unexpected(visits.error());
  // Their own key last: as long as it is there, what was cut off is found again.
  for (const std::string& visit : *visits) {
    if (auto gone = world.store->erase(visit); !gone) return problem_of(gone.error());
  }
  if (auto gone = world.store->erase(client); !gone) return problem_of(gone.error());
  const auto told = world.store->append({.id = world.new_id(),
                                         .stream = client,
                                         .after_seq = store::NewFact::at_the_end,
                                         .made_at = world.now(),
                                         .kind = "client.erased",
                                         .body = wire::print({{"by", by.empty() ? "this machine" : by}})});
  return told ? Result<void>() : problem_of(told.error());
}

Result<std::vector<std::string>> last_seen_before(World& world, const std::string& day) {
  std::map<std::int64_t, store::Fact> seen;
  if (auto read = take_all(world, {.stream = {}, .key = {}, .kind = "client.seen"}, seen); !read)
    return tl::unexpected(read.error());
  std::map<std::string, std::string> last;  // day by client
  for (const auto& [seq, fact] : seen) {
    const auto body = wire::parse(fact.body);
    if (fact.closed || !body || !body->contains("date") || !(*body)["date"].is_string()) continue;
    std::string& newest = last[fact.stream];
    newest = std::max(newest, (*body)["date"].get<std::string>());
  }
  std::vector<std::string> out;
  for (const auto& [client, date] : last) {
    if (!date.empty() && date < day) out.push_back(client);
  }
  return out;
}

std::string years_before(const std::string& day, int years) {
  int year = 0, month = 0, date = 0;
  constexpr int february = 2, last = 28;
  if (std::sscanf(day.c_str(), "%4d-%2d-%2d", &year, &month, &date) != 3) return "";
  if (month == february && date > last) date = last;
  std::array<char, 32> out{};
  std::snprintf(out.data(), out.size(), "%04d-%02d-%02d", year - years, month, date);
  return out.data();
}

}  // namespace strandline::salon
