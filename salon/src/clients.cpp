#include "strandline/salon/clients.h"

#include <algorithm>

#include "read_on.h"
#include "strandline/store/plain.h"

namespace strandline::salon {

namespace {

constexpr const char* named_kind = "client.named";
constexpr const char* seen_kind = "client.seen";
constexpr const char* erased_kind = "client.erased";
constexpr const char* card_kind = "client.card";

std::string text_of(const wire::Json& body, const char* key) {
  const auto found = body.find(key);
  return found != body.end() && found->is_string() ? found->get<std::string>() : "";
}

}  // namespace

Result<void> Clients::catch_up() {
  const auto names = read_on(world_, {.stream = "", .key = "", .kind = named_kind}, names_read_,
                             [&](const store::Fact& fact, const wire::Json& body) {
                               if (body.is_null()) return;  // erased
                               const auto [at, fresh] = place_.try_emplace(fact.stream, known_.size());
                               if (fresh) known_.emplace_back().line.id = fact.stream;
                               Known& one = known_[at->second];
                               one.line.name = text_of(body, "name");
                               one.plain = store::plain(one.line.name);
                             });
  if (!names) return names;
  // Whoever was erased since is gone from memory too; there are never many.
  std::int64_t from = 0;
  const auto erased = read_on(world_, {.stream = "", .key = "", .kind = erased_kind}, from,
                              [&](const store::Fact& fact, const wire::Json&) {
                                const auto at = place_.find(fact.stream);
                                if (at == place_.end()) return;
                                const std::size_t hole = at->second;
                                place_.erase(at);
                                if (hole + 1 != known_.size()) {
                                  known_[hole] = std::move(known_.back());
                                  place_[known_[hole].line.id] = hole;
                                }
                                known_.pop_back();
                              });
  if (!erased) return erased;
  return read_on(world_, {.stream = "", .key = "", .kind = seen_kind}, visits_read_,
                 [&](const store::Fact& fact, const wire::Json& body) {
                   if (body.is_null()) return;
                   const auto at = place_.find(fact.stream);
                   if (at == place_.end()) return;
                   Known& one = known_[at->second];
                   ++one.line.visits;
                   one.line.last_visit = text_of(body, "visit");
                   one.line.last_date = text_of(body, "date");
                   one.newest = fact.store_seq;
                 });
}

template <class Wanted>
Result<std::vector<ClientLine>> Clients::those(int limit, Wanted&& wanted) {
  const std::scoped_lock held(lock_);
  if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
  std::vector<const Known*> found;
  for (const Known& one : known_) {
    if (wanted(one.plain)) found.push_back(&one);
  }
  const auto many = std::min(found.size(), static_cast<std::size_t>(limit));
  std::partial_sort(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(many), found.end(),
                    [](const Known* a, const Known* b) { return a->newest > b->newest; });
  std::vector<ClientLine> out;
  for (std::size_t i = 0; i < many; ++i) out.push_back(found[i]->line);
  return out;
}

Result<std::vector<ClientLine>> Clients::find(const std::string& text, int limit) {
  constexpr int most = 500;
  if (limit < 1 || limit > most) return tl::unexpected(Problems{{"bad_request", "", {{"what", "limit"}}}});
  return those(limit, [part = store::plain(text)](const std::string& name) {
    return part.empty() || name.find(part) != std::string::npos;
  });
}

Result<std::vector<ClientLine>> Clients::named(const std::string& name) {
  constexpr int most = 20;
  return those(most, [whole = store::plain(name)](const std::string& known) { return known == whole; });
}

Result<ClientRecord> Clients::open(const std::string& id) {
  ClientRecord out;
  {
    const std::scoped_lock held(lock_);
    if (const auto read = catch_up(); !read) return tl::unexpected(read.error());
    const auto at = place_.find(id);
    if (at == place_.end()) return tl::unexpected(Problems{{"client_not_found", "", {{"id", id}}}});
    out.client = known_[at->second].line;
  }
  std::int64_t from = 0;
  bool any = false;
  const auto read = read_on(
      world_, {.stream = id, .key = "", .kind = ""}, from, [&](const store::Fact& fact, const wire::Json& body) {
        if (body.is_null()) return;
        any = true;
        if (fact.kind == card_kind)
          out.cards.push_back({text_of(body, "date"), text_of(body, "text"), text_of(body, "contact"), fact.made_at});
        if (fact.kind != seen_kind) return;
        out.visits.push_back({text_of(body, "visit"), text_of(body, "date"), fact.made_at});
      });
  if (!read) return tl::unexpected(read.error());
  // Erased since the names were read.
  if (!any) return tl::unexpected(Problems{{"client_not_found", "", {{"id", id}}}});
  std::reverse(out.visits.begin(), out.visits.end());
  std::reverse(out.cards.begin(), out.cards.end());
  return out;
}

Result<bool> Clients::stands_here(const NewClient& one) {
  constexpr int all = 500;
  const auto same = those(all, [whole = store::plain(one.name)](const std::string& known) { return known == whole; });
  if (!same) return tl::unexpected(same.error());
  for (const ClientLine& line : *same) {
    if (line.id == one.id) return false;  // told again after a lost answer
    const auto record = open(line.id);
    if (!record) return tl::unexpected(record.error());
    const auto alike = [&](const ClientCard& c) {
      return c.date == one.date && c.text == one.text && c.contact == one.contact;
    };
    const bool bare = one.date.empty() && one.text.empty() && one.contact.empty();
    if (bare ? record->cards.empty() : std::any_of(record->cards.begin(), record->cards.end(), alike)) return true;
  }
  return false;
}

Result<AddedClients> Clients::add(const std::vector<NewClient>& list, const std::string& by) {
  constexpr std::size_t most = 2000;
  if (list.size() > most) return tl::unexpected(Problems{{"too_many", "/clients", {{"max", std::to_string(most)}}}});
  Problems problems;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string path = wire::pointer("/clients", i);
    if (list[i].id.empty() || !id_for(world_, list[i].id))
      problems.push_back({"not_an_id", path + "/id", {{"id", list[i].id}}});
    if (store::plain(list[i].name).find_first_not_of(' ') == std::string::npos)
      problems.push_back({"left_empty", path + "/name", {{"key", "name"}}});
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  const std::string about = by.empty() ? "{}" : wire::print(wire::Json{{"by", by}});
  std::vector<store::NewFact> facts;
  AddedClients out;
  for (const NewClient& one : list) {
    const auto known = stands_here(one);
    if (!known) return tl::unexpected(known.error());
    ++(*known ? out.known : out.added);
    if (*known) continue;
    const auto tell = [&](const char* kind, const char* what, const wire::Json& body) {
      facts.push_back({.id = one.id + what,
                       .stream = one.id,
                       .after_seq = store::NewFact::at_the_end,
                       .made_at = world_.now(),
                       .kind = kind,
                       .body = wire::print(body),
                       .key = one.id,
                       .about = about});
    };
    tell(named_kind, "-name", {{"name", one.name}});
    if (!one.text.empty() || !one.contact.empty() || !one.date.empty())
      tell(card_kind, "-card", {{"date", one.date}, {"text", one.text}, {"contact", one.contact}});
  }
  if (facts.empty()) return out;
  const auto kept = world_.store->hand_in(facts, "", 0);
  if (!kept) return problem_of(kept.error());
  return out;
}

std::vector<store::NewFact> Clients::facts_for(const std::string& client, const std::string& name,
                                               const std::string& visit_id, const std::string& date,
                                               const std::string& made_at) {
  std::vector<store::NewFact> out;
  const auto add = [&](const char* kind, const std::string& id, const wire::Json& body) {
    out.push_back({.id = id,
                   .stream = client,
                   .after_seq = store::NewFact::at_the_end,
                   .made_at = made_at,
                   .kind = kind,
                   .body = wire::print(body),
                   .key = client});
  };
  if (!name.empty()) add(named_kind, client + "-name", {{"name", name}});
  add(seen_kind, visit_id + "-seen", {{"visit", visit_id}, {"date", date}});
  return out;
}

}  // namespace strandline::salon
