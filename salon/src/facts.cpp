#include "strandline/salon/facts.h"

#include <algorithm>
#include <regex>

#include "handed_in.h"
#include "members.h"
#include "of_store.h"

namespace strandline::salon {

namespace {

constexpr int most = 500;

tl::unexpected<Problems> one(const char* code, const std::string& path, const char* key, std::string value) {
  Problem problem{code, path, {}};
  problem.params[key] = std::move(value);
  return tl::unexpected(Problems{std::move(problem)});
}

tl::unexpected<Problems> handed_in_already(const store::Fact& end) {
  return tl::unexpected(Problems{{"visit_handed_in", "", {{"at", end.made_at}}}});
}

ToldFact told(const store::Fact& fact) {
  ToldFact out{.store_seq = fact.store_seq,
               .id = fact.id,
               .visit_id = fact.stream,
               .seq = fact.seq,
               .made_at = fact.made_at,
               .kind = fact.kind,
               .version = fact.version,
               .person = "",
               .by = "",
               .erased = fact.closed,
               .body = nullptr};
  if (const auto about = wire::parse(fact.about))
    out.person = text_at(*about, "person"), out.by = text_at(*about, "by");
  if (auto body = wire::parse(fact.body)) out.body = std::move(*body);
  return out;
}

// Whose a visit is, and what is said of each of its facts in clear: ids and nothing else.
struct Whose {
  std::string visit_id, person, by;

  std::string key() const { return person.empty() ? visit_id : person; }
  std::string about() const {
    wire::Json out = wire::Json::object();
    if (!person.empty()) out["person"] = person;
    if (!by.empty()) out["by"] = by;
    return wire::print(out);
  }
};

bool instant(const std::string& text) {
  static const std::regex shape("\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d{1,6})?Z");
  return std::regex_match(text, shape);
}

// Keys that nobody reads are not passed over.
Problems strange_keys(const wire::Json& in, const std::string& path, std::initializer_list<std::string_view> known) {
  Problems out;
  for (const auto& [key, value] : in.items()) {
    if (std::find(known.begin(), known.end(), key) == known.end())
      out.push_back({"unknown_key", wire::pointer(path, key), {{"key", key}}});
  }
  return out;
}

Result<store::NewFact> fact_from(World& world, const wire::Json& in, const std::string& path, const Whose& whose) {
  if (!in.is_object()) return one("wrong_type", path, "expected", "object");
  if (Problems strange = strange_keys(in, path, {"id", "kind", "version", "made_at", "body"}); !strange.empty())
    return tl::unexpected(std::move(strange));
  for (const char* key : {"id", "kind", "body"}) {
    if (!in.contains(key)) return one("missing_key", path, "key", key);
  }
  const auto id = text_at(in, "id").empty() ? one("not_an_id", wire::pointer(path, "id"), "id", "")
                                            : id_for(world, text_at(in, "id"));
  if (!id) return tl::unexpected(id.error());
  const std::string kind = text_at(in, "kind");
  if (Problems problems = wire::check_happened(kind, in["body"], path); !problems.empty())
    return tl::unexpected(std::move(problems));
  const int version = wire::version_of(kind).value_or(1);
  if (in.contains("version") && in["version"] != version) {
    return tl::unexpected(Problems{
        {"fact_version", wire::pointer(path, "version"), {{"kind", kind}, {"version", std::to_string(version)}}}});
  }
  std::string made_at = text_at(in, "made_at");
  if (in.contains("made_at") && !instant(made_at))
    return one("bad_instant", wire::pointer(path, "made_at"), "text", made_at);
  return store::NewFact{.id = *id,
                        .stream = whose.visit_id,
                        .after_seq = store::NewFact::at_the_end,
                        .made_at = made_at.empty() ? world.now() : made_at,
                        .kind = kind,
                        .body = wire::print(in["body"]),
                        .key = whose.key(),
                        .about = whose.about(),
                        .version = version};
}

// The earlier visit that is done again must be there.
Result<void> check_redo(World& world, const store::NewFact& fact, const std::string& path) {
  if (fact.kind != "result") return {};
  const auto body = wire::parse(fact.body);
  if (!body || !body->contains("redo") || (*body)["redo"].is_null()) return {};
  const std::string earlier = text_at((*body)["redo"], "visit");
  const auto end = end_of(world, earlier);
  if (!end) return tl::unexpected(end.error());
  if (!*end) return one("redo_unknown", path + "/body/redo/visit", "id", earlier);
  return {};
}

// What was told of a visit as mixed, before and with the end of it.
Result<std::vector<wire::Json>> what_was_mixed(World& world, const std::string& visit_id,
                                               const std::vector<store::NewFact>& now) {
  constexpr const char* kind = "mixed";
  std::vector<wire::Json> out;
  std::vector<std::string> ids;
  const auto add = [&](const auto& fact) {
    if (std::find(ids.begin(), ids.end(), fact.id) != ids.end()) return;  // told before, and once more
    ids.push_back(fact.id);
    if (auto body = wire::parse(fact.body)) out.push_back(std::move(*body));
  };
  const auto before = world.store->facts({.after = 0, .stream = visit_id, .key = "", .kind = kind, .limit = most});
  if (!before) return problem_of(before.error());
  for (const store::Fact& fact : *before) add(fact);
  for (const store::NewFact& fact : now)
    if (fact.kind == kind) add(fact);
  return out;
}

// Who it is, when the draft does not say: somebody new, or whoever is meant by a name that only one person can have.
Result<std::string> whose_visit(Clients& clients, const std::string& asked, const std::string& name) {
  if (asked == "new" || (asked.empty() && name.empty())) return std::string();
  if (!asked.empty()) return clients.open(asked).map([&](const ClientRecord&) { return asked; });
  const auto same = clients.named(name);
  if (!same) return tl::unexpected(same.error());
  if (same->empty()) return std::string();
  std::string ids;
  for (const ClientLine& line : *same) ids += (ids.empty() ? "" : ",") + line.id;
  return tl::unexpected(Problems{{"client_same_name", "/person", {{"name", name}, {"ids", ids}}}});
}

}  // namespace

Result<ToldFact> tell(World& world, const std::string& visit_id, const wire::Json& asked, const std::string& by) {
  const auto row = world.store->visit(visit_id);
  if (!row) return problem_of(row.error());
  const auto end = end_of(world, visit_id);
  if (!end) return tl::unexpected(end.error());
  if (!*row && !*end) return one("visit_not_found", "", "id", visit_id);
  const Whose whose{visit_id, *end ? told(**end).person : (*row)->person, by};
  const auto fact = fact_from(world, asked, "", whose);
  if (!fact) return tl::unexpected(fact.error());
  if (const auto redo = check_redo(world, *fact, ""); !redo) return tl::unexpected(redo.error());
  if (*end && wire::before_the_end(fact->kind)) return handed_in_already(**end);
  const auto kept = world.store->append(*fact);
  if (!kept) return problem_of(kept.error());
  return told(*kept);
}

Result<FactsPage> facts_of(World& world, const std::string& visit_id, const std::string& cursor, int limit) {
  if (limit < 1 || limit > most) return one("bad_request", "", "what", "limit");
  const auto after = place_of(cursor, 0);
  if (!after) return tl::unexpected(after.error());
  // One more than asked tells whether another page follows.
  const auto facts =
      world.store->facts({.after = *after, .stream = visit_id, .key = "", .kind = "", .limit = limit + 1});
  if (!facts) return problem_of(facts.error());
  FactsPage out;
  for (const store::Fact& fact : *facts) {
    if (out.facts.size() == static_cast<std::size_t>(limit)) {
      out.next = std::to_string(out.facts.back().store_seq);
      break;
    }
    out.facts.push_back(told(fact));
  }
  if (!out.facts.empty()) return out;
  const auto row = world.store->visit(visit_id);
  if (!row) return problem_of(row.error());
  if (!*row && *after == 0) return one("visit_not_found", "", "id", visit_id);
  return out;
}

Result<SavedVisit> hand_in(World& world, Clients& clients, const std::string& visit_id, const wire::Json& asked,
                           const std::string& by, Stock* stock) {
  if (!asked.is_object()) return one("wrong_type", "", "expected", "object");
  if (Problems strange = strange_keys(asked, "", {"entry", "seq", "person", "facts"}); !strange.empty())
    return tl::unexpected(std::move(strange));
  const std::string entry = text_at(asked, "entry");
  if (const auto good = id_for(world, entry); !good || entry.empty()) return one("not_an_id", "/entry", "id", entry);
  if (!asked.contains("seq") || !asked["seq"].is_number_integer()) return one("missing_key", "", "key", "seq");
  const auto end = end_of(world, visit_id);
  if (!end) return tl::unexpected(end.error());
  if (*end) return (*end)->id == entry ? as_handed_in(**end) : handed_in_already(**end);
  const auto row = world.store->visit(visit_id);
  if (!row) return problem_of(row.error());
  if (!*row) return one("visit_not_found", "", "id", visit_id);
  const store::VisitRow& draft = **row;

  std::string person = draft.person, name;
  if (person.empty() || asked.contains("person")) {
    auto found = whose_visit(clients, text_at(asked, "person"), draft.client);
    if (!found) return tl::unexpected(found.error());
    person = std::move(*found);
    if (person.empty() && !draft.client.empty()) name = draft.client, person = world.new_id();
  }
  const Whose whose{visit_id, person, by};
  const std::string now = world.now();
  std::vector<store::NewFact> facts;
  const wire::Json list = asked.value("facts", wire::Json::array());
  if (!list.is_array()) return one("wrong_type", "/facts", "expected", "list");
  if (list.size() > static_cast<std::size_t>(most)) return one("too_many", "/facts", "max", std::to_string(most));
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string path = wire::pointer("/facts", i);
    auto fact = fact_from(world, list[i], path, whose);
    if (!fact) return tl::unexpected(fact.error());
    if (const auto redo = check_redo(world, *fact, path); !redo) return tl::unexpected(redo.error());
    facts.push_back(std::move(*fact));
  }
  const auto document = wire::parse(draft.body);
  if (!document) return problem_of({"store_damaged", "visit " + visit_id, draft.store_seq});
  const wire::Json body{{"opened_at", draft.opened_at}, {"saves", draft.seq}, {"document", *document}};
  facts.push_back({.id = entry,
                   .stream = visit_id,
                   .after_seq = store::NewFact::at_the_end,
                   .made_at = now,
                   .kind = end_kind,
                   .body = wire::print(body),
                   .key = whose.key(),
                   .about = whose.about()});
  if (!person.empty()) {
    for (store::NewFact& fact : Clients::facts_for(person, name, visit_id, draft.date, now))
      facts.push_back(std::move(fact));
  }
  Booking booking;
  if (stock) {
    auto booked = what_was_mixed(world, visit_id, facts).and_then([&](const std::vector<wire::Json>& mixed) {
      // Nobody told what was mixed: then what was weighed is.
      return stock->booking(visit_id, *document, mixed.empty() ? std::nullopt : std::optional(mixed), by);
    });
    if (!booked) return tl::unexpected(booked.error());
    facts.insert(facts.end(), booked->facts().begin(), booked->facts().end());
    booking = std::move(*booked);
  }
  const auto kept = world.store->hand_in(facts, visit_id, asked["seq"].get<std::int64_t>());
  if (!kept) {
    // Another device was quicker by a moment.
    const auto theirs =
        kept.error().code == "store_conflict" ? end_of(world, visit_id) : Result<std::optional<store::Fact>>();
    if (theirs && *theirs) return (*theirs)->id == entry ? as_handed_in(**theirs) : handed_in_already(**theirs);
    return problem_of(kept.error());
  }
  booking.kept();
  for (const store::Fact& fact : *kept) {
    if (fact.id == entry) return as_handed_in(fact);
  }
  return problem_of({"store_damaged", "visit " + visit_id, 0});
}

}  // namespace strandline::salon
