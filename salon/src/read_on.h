// Facts read once and then only what is new.
#pragma once

#include "of_store.h"
#include "strandline/wire/json.h"

namespace strandline::salon {

// Every fact of one kind after `after`, which moves on. `take` gets null for the body of one whose key was destroyed.
template <class Take>
Result<void> read_on(World& world, store::FactsAsked asked, std::int64_t& after, Take&& take) {
  constexpr int page = 1000;
  asked.limit = page;
  for (;;) {
    asked.after = after;
    const auto facts = world.store->facts(asked);
    if (!facts) return problem_of(facts.error());
    for (const store::Fact& fact : *facts) {
      after = fact.store_seq;
      if (fact.closed) {
        take(fact, wire::Json(nullptr));
        continue;
      }
      const auto body = wire::parse(fact.body);
      if (!body) return problem_of({"store_damaged", "entry " + std::to_string(fact.store_seq), fact.store_seq});
      take(fact, *body);
    }
    if (facts->size() < static_cast<std::size_t>(page)) return {};
  }
}

}  // namespace strandline::salon
