#include "strandline/salon/ended.h"

#include <algorithm>

#include "handed_in.h"
#include "members.h"
#include "of_store.h"

namespace strandline::salon {

namespace {

using wire::Json;

double parts_of(const Json& bowl) {
  double sum = 0;
  for (const Json& part : list_at(bowl, "parts")) sum += number_at(part, "grams").value_or(0);
  return sum;
}

void take_running(const Json& running, EndedVisit& v) {
  const auto plan = running.find("plan");
  if (plan != running.end() && plan->is_object()) v.planned_min = number_at(*plan, "finish_min");
  v.real_min = number_at(running, "ended_at");
  for (const Json& bowl : list_at(running, "bowls")) {
    const std::string label = text_at(bowl, "label");
    double mixed = 0, left = 0;
    bool weighed = false;
    for (const Json& one : list_at(running, "leftovers"))
      if (text_at(one, "bowl") == label) weighed = true, left += number_at(one, "grams").value_or(0);
    if (!weighed) continue;
    for (const Json& one : list_at(running, "additions"))
      if (text_at(one, "bowl") == label) mixed += number_at(one, "grams").value_or(0);
    if (mixed <= 0) continue;
    v.planned_g += parts_of(bowl), v.mixed_g += mixed, v.left_g += std::min(left, mixed);
  }
}

void take_end(const Json& body, EndedVisit& v) {
  const auto document = body.find("document");
  if (document == body.end() || !document->is_object()) return;
  const std::string shelf = text_at(*document, "shelf");
  v.shelf = shelf.empty() ? "demo" : shelf.substr(0, shelf.find('@'));
  v.mix_factor = number_at(*document, "mix_factor").value_or(1);
  const auto running = document->find("running");
  if (running != document->end() && running->is_object()) take_running(*running, v);
}

void take_result(const Json& body, EndedVisit& v) {
  const auto foreseen = [&](const std::string& zone) -> const Json* {
    for (const Json& one : list_at(body, "foreseen"))
      if (text_at(one, "zone") == zone) return &one;
    return nullptr;
  };
  v.zones.clear();  // a later result corrects the one before
  for (const Json& zone : list_at(body, "zones")) {
    const Json* was = foreseen(text_at(zone, "zone"));
    const auto now = number_at(zone, "level");
    const auto then = was ? number_at(*was, "level") : std::nullopt;
    if (now && then)
      v.zones.push_back({text_at(zone, "zone"), *now - *then, text_at(zone, "tone") == text_at(*was, "tone")});
  }
  if (const auto redo = body.find("redo"); redo != body.end() && redo->is_object())
    v.redo_of = text_at(*redo, "visit"), v.redo_cause = text_at(*redo, "cause");
}

}  // namespace

void Ended::take(const store::Fact& fact) {
  EndedVisit& v = visits_[fact.stream];
  v.id = fact.stream;
  if (const auto about = wire::parse(fact.about); about && fact.kind == end_kind)
    v.by = text_at(*about, "by"), v.person = text_at(*about, "person");
  if (fact.kind == end_kind) v.at = fact.made_at;
  const auto body = wire::parse(fact.body);
  if (!body) return;  // erased: when it was and by whom is left
  if (fact.kind == end_kind) take_end(*body, v);
  if (fact.kind == "result") take_result(*body, v);
  if (fact.kind == "agreed") v.price_from = number_at(*body, "price_from"), v.price_to = number_at(*body, "price_to");
  if (fact.kind == "mixed")
    for (const Json& zone : list_at(*body, "zones"))
      if (zone.is_string()) v.ranges[zone.get<std::string>()] = text_at(*body, "range");
}

Result<void> Ended::catch_up(const std::string& kind) {
  constexpr int page = 500;
  for (std::int64_t& after = after_[kind];;) {
    store::FactsAsked asked;
    asked.after = after, asked.kind = kind, asked.limit = page;
    const auto facts = world_.store->facts(asked);
    if (!facts) return problem_of(facts.error());
    for (const store::Fact& fact : *facts) take(fact), after = fact.store_seq;
    if (facts->size() < static_cast<std::size_t>(page)) return {};
  }
}

Result<std::vector<EndedVisit>> Ended::visits() {
  const std::lock_guard lock(mutex_);
  for (const char* kind : {"agreed", "mixed", "result", end_kind})
    if (const auto read = catch_up(kind); !read) return tl::unexpected(read.error());
  std::vector<EndedVisit> out;
  for (const auto& [id, visit] : visits_)
    if (!visit.at.empty()) out.push_back(visit);
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
  return out;
}

}  // namespace strandline::salon
