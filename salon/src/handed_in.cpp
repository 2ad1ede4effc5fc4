#include "handed_in.h"

#include "of_store.h"

namespace strandline::salon {

Result<std::optional<store::Fact>> end_of(World& world, const std::string& visit_id) {
  const auto facts = world.store->facts({.stream = visit_id, .key = "", .kind = end_kind, .limit = 1});
  if (!facts) return problem_of(facts.error());
  if (facts->empty()) return std::nullopt;
  return facts->front();
}

Result<SavedVisit> as_handed_in(const store::Fact& end) {
  if (end.closed) return tl::unexpected(Problems{{"visit_erased", "", {{"id", end.stream}}}});
  const auto body = wire::parse(end.body);
  const auto about = wire::parse(end.about);
  if (!body || !about || !body->contains("document") || !(*body)["document"].is_object())
    return problem_of({"store_damaged", "entry " + std::to_string(end.store_seq), end.store_seq});
  const auto text = [](const wire::Json& in, const char* key) {
    const auto found = in.find(key);
    return found != in.end() && found->is_string() ? found->get<std::string>() : "";
  };
  const wire::Json& document = (*body)["document"];
  const auto saves = body->find("saves");
  return SavedVisit{{.id = end.stream,
                     .seq = saves != body->end() && saves->is_number_integer() ? saves->get<std::int64_t>() : 0,
                     .client = text(document, "client"),
                     .date = text(document, "date"),
                     .opened_at = text(*body, "opened_at"),
                     .changed_at = end.made_at,
                     .person = text(*about, "person"),
                     .handed_in_at = end.made_at},
                    end.id,
                    document};
}

}  // namespace strandline::salon
