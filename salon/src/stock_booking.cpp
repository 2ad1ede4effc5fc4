// What a visit's bowls took from the shelf.
#include <algorithm>

#include "members.h"
#include "of_store.h"
#include "strandline/salon/stock.h"

namespace strandline::salon {

namespace {

using wire::Json, wire::Moved, wire::StockMove;

// The shelf whose stock a document draws on; "" where it is written out.
std::string shelf_of(const Json& document) {
  const auto it = document.find("shelf");
  if (it == document.end()) return "demo";
  if (!it->is_string()) return "";
  const std::string name = it->get<std::string>();
  return name.empty() ? "demo" : name.substr(0, name.find('@'));
}

// What a visit's bowls should be booked with: what was left over is waste, shared out as the mix was.
std::map<BookedFor, Booked> wanted(const std::string& visit, const Json& running,
                                   const std::optional<std::vector<Json>>& mixed) {
  std::map<BookedFor, Booked> out;
  if (mixed) {
    for (const Json& body : *mixed)
      for (const Json& part : list_at(body, "parts"))
        out[{visit, text_at(body, "label"), text_at(part, "product"), std::max(1, body.value("mix", 1))}].use +=
            milligrams(number_at(part, "grams").value_or(0));
  } else {
    for (const Json& a : list_at(running, "additions"))
      out[{visit, text_at(a, "bowl"), text_at(a, "product"), std::max(1, a.value("mix", 1))}].use +=
          milligrams(number_at(a, "grams").value_or(0));
  }
  for (const Json& left : list_at(running, "leftovers")) {
    Milligrams total = 0, thrown = milligrams(number_at(left, "grams").value_or(0));
    std::vector<Booked*> parts;
    for (auto& [key, booked] : out) {
      if (key.bowl != text_at(left, "bowl") || key.mix != left.value("mix", 1)) continue;
      total += booked.use + booked.waste;
      parts.push_back(&booked);
    }
    if (total <= 0) continue;
    thrown = std::min(thrown, total);
    // Cumulative, so that the parts add up to the milligram.
    Milligrams before = 0, thrown_before = 0;
    for (Booked* part : parts) {
      const Milligrams whole = part->use + part->waste;
      before += whole;
      const auto until = static_cast<Milligrams>(static_cast<__int128>(thrown) * before / total);
      part->waste = until - thrown_before, part->use = whole - part->waste;
      thrown_before = until;
    }
  }
  return out;
}

}  // namespace

Result<Booking> Stock::booking(const std::string& visit_id, const Json& document,
                               const std::optional<std::vector<Json>>& mixed, const std::string& by) {
  const std::string shelf = shelf_of(document);
  if (shelf.empty()) return Booking();
  const auto running = document.find("running");
  const Json nothing = Json::object();
  auto target = wanted(visit_id, running != document.end() && running->is_object() ? *running : nothing, mixed);

  std::unique_lock lock(mutex_);
  if (const auto read = ready(); !read) return tl::unexpected(read.error());
  // Most saves weigh nothing.
  if (target.empty() && !ledgers_.contains(shelf)) return Booking();
  Ledger& ledger = ledgers_[shelf];
  const auto booked = ledger.booked(visit_id);
  for (const auto& [key, there] : booked) target.try_emplace(key);
  std::set<std::string> products;
  for (const auto& [key, booking] : target) products.insert(key.product);

  struct Step {
    const BookedFor* key;
    Moved what;
    Milligrams mg;
  };
  std::vector<Step> steps;
  for (const auto& [key, want] : target) {
    const auto there = booked.find(key);
    const Booked now = there == booked.end() ? Booked{} : there->second;
    if (want.use != now.use) steps.push_back({&key, Moved::use, want.use - now.use});
    if (want.waste != now.waste) steps.push_back({&key, Moved::waste, want.waste - now.waste});
  }
  if (steps.empty()) return Booking();
  // What comes back comes first, so that it can go another way.
  std::stable_sort(steps.begin(), steps.end(), [](const Step& a, const Step& b) { return a.mg < 0 && b.mg >= 0; });
  Booking undo(std::move(lock), ledger, ledger.mark(products));
  std::vector<store::NewFact> facts;
  for (const Step& step : steps) {
    StockMove move;
    move.wish.what = step.what, move.wish.product = step.key->product, move.wish.grams = grams(step.mg);
    move.visit = visit_id, move.bowl = step.key->bowl, move.mix = step.key->mix;
    move.id = world_.new_id(), move.at = world_.now(), move.by = by;
    auto planned = ledger.planned(std::move(move));
    if (!planned) return tl::unexpected(planned.error());
    facts.push_back(fact_of(shelf, *planned));
    ledger.take(std::move(*planned));
  }
  undo.books(std::move(facts));
  return undo;
}

Result<void> Stock::book(const std::string& visit_id, const Json& document, const std::string& by) {
  auto booking = this->booking(visit_id, document, std::nullopt, by);
  if (!booking) return tl::unexpected(booking.error());
  if (booking->facts().empty()) return {};
  const auto kept = world_.store->hand_in(booking->facts(), "", 0);
  if (!kept) return problem_of(kept.error());
  booking->kept();
  return {};
}

}  // namespace strandline::salon
