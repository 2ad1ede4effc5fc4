#include "strandline/salon/hand_notes.h"

#include <algorithm>
#include <map>
#include <utility>

#include "of_store.h"
#include "strandline/wire/json.h"

namespace strandline::salon {
namespace {

constexpr const char *kStream = "hand_notes", *kKind = "hand_note";
constexpr int kPage = 500;

bool is_word(const std::string& text) {
  constexpr std::size_t longest = 60;
  return !text.empty() && text.size() <= longest && std::ranges::all_of(text, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
  });
}

}  // namespace

Result<std::vector<HandNote>> hand_notes(World& world, const std::string& person) {
  std::map<std::pair<std::string, std::string>, HandNote> newest;
  store::FactsAsked asked{.stream = kStream, .key = "", .kind = kKind, .limit = kPage};
  for (;;) {
    const auto page = world.store->facts(asked);
    if (!page) return problem_of(page.error());
    for (const store::Fact& fact : *page) {
      const auto body = wire::parse(fact.body);
      if (!body) return tl::unexpected(body.error());
      HandNote note{body->value("technique", ""), body->value("person", ""), body->value("text", ""), fact.made_at};
      if (note.person.empty() || note.person == person) newest[{note.technique, note.person}] = std::move(note);
    }
    if (static_cast<int>(page->size()) < kPage) break;
    asked.after = page->back().store_seq;
  }
  std::vector<HandNote> out;
  for (auto& [key, note] : newest)
    if (!note.text.empty()) out.push_back(std::move(note));
  return out;
}

Result<void> write_hand_note(World& world, const HandNote& note) {
  if (!is_word(note.technique)) return tl::unexpected(Problems{{"not_an_id", "", {{"id", note.technique}}}});
  if (note.text.size() > kHandNoteLongest)
    return tl::unexpected(Problems{{"too_long", "/text", {{"max", std::to_string(kHandNoteLongest)}}}});
  store::NewFact fact;
  fact.id = world.new_id(), fact.stream = kStream, fact.after_seq = store::NewFact::at_the_end;
  fact.made_at = world.now(), fact.kind = kKind;
  fact.body = wire::print({{"technique", note.technique}, {"person", note.person}, {"text", note.text}});
  if (const auto written = world.store->append(fact); !written) return problem_of(written.error());
  return {};
}

}  // namespace strandline::salon
