#include "strandline/salon/learning.h"

#include <algorithm>

#include "handed_in.h"
#include "members.h"
#include "of_store.h"
#include "strandline/wire/happened_fields.h"

namespace strandline::salon {

namespace {

constexpr const char* result_kind = "result";
constexpr const char* without_kind = "learning.without";
constexpr const char* erased_kind = "client.erased";
constexpr const char* stream = "learning";
constexpr int page = 500;

tl::unexpected<Problems> one(const char* code, const char* key = nullptr, const std::string& value = {}) {
  Problem problem{code, "", {}};
  if (key) problem.params[key] = value;
  return tl::unexpected(Problems{std::move(problem)});
}

// The body of a fact of one kind; nothing where it is not as that kind is now.
template <class T>
std::optional<T> body_of(const store::Fact& fact) {
  const auto json = wire::parse(fact.body);
  if (!json) return std::nullopt;
  Problems problems;
  T out{};
  wire::decode(*json, out, wire::At(problems, ""));
  if (!problems.empty()) return std::nullopt;
  return out;
}

// Minutes that a zone had a bowl on it, where that was told.
std::optional<double> minutes_on(const std::vector<wire::Applied>& applied, const std::string& zone,
                                 const std::string& bowl) {
  for (const wire::Applied& a : applied)
    if (a.zone == zone && a.bowl == bowl && a.from_min && a.until_min && *a.until_min > *a.from_min)
      return *a.until_min - *a.from_min;
  return std::nullopt;
}

// What was really mixed, the last mix of each bowl; what was planned where nobody told.
std::vector<Step> steps_of(const std::vector<wire::Mixed>& mixed, const std::vector<wire::Applied>& applied,
                           const std::vector<Bowl>& planned) {
  std::vector<Bowl> bowls;
  for (const wire::Mixed& m : mixed) {
    const auto same = std::find_if(bowls.begin(), bowls.end(), [&](const Bowl& b) { return b.label == m.bowl.label; });
    if (same == bowls.end())
      bowls.push_back(m.bowl);
    else
      *same = m.bowl;
  }
  if (bowls.empty()) bowls = planned;
  std::stable_sort(bowls.begin(), bowls.end(), [](const Bowl& a, const Bowl& b) { return a.step < b.step; });
  std::vector<Step> steps;
  for (const Bowl& b : bowls) {
    Step step{b.formula, b.zones, {}};
    bool told = false;
    for (const std::string& zone : b.zones) {
      const auto minutes = minutes_on(applied, zone, b.label);
      told = told || minutes.has_value();
      step.minutes.push_back(minutes.value_or(b.formula.minutes));
    }
    if (!told) step.minutes.clear();
    steps.push_back(std::move(step));
  }
  return steps;
}

// Told as it was predicted: nobody named another level.
bool as_foreseen(const std::vector<wire::ReachedZone>& foreseen, const wire::ReachedZone& told) {
  return std::any_of(foreseen.begin(), foreseen.end(),
                     [&](const wire::ReachedZone& f) { return f.zone == told.zone && f.level == told.level; });
}

}  // namespace

Result<learned::Outcome> Learning::outcome(const store::Fact& result) {
  const auto told = body_of<wire::VisitResult>(result);
  if (!told) return one("result_unreadable");
  const auto end = end_of(world_, result.stream);
  if (!end) return tl::unexpected(end.error());
  if (!*end) {
    drafts_.insert(result.stream);
    return one("result_of_a_draft");
  }
  const auto visit = as_handed_in(**end);
  if (!visit) return tl::unexpected(visit.error());
  const auto read = wire::read_visit(visit->document, shelves_.sources());
  if (!read) return tl::unexpected(read.error());
  std::vector<wire::Mixed> mixed;
  std::vector<wire::Applied> applied;
  for (std::int64_t after = 0;;) {
    const auto facts =
        world_.store->facts({.after = after, .stream = result.stream, .key = "", .kind = "", .limit = page});
    if (!facts) return problem_of(facts.error());
    for (const store::Fact& f : *facts) {
      after = f.store_seq;
      if (f.kind == "mixed")
        if (auto m = body_of<wire::Mixed>(f)) mixed.push_back(std::move(*m));
      if (f.kind == "applied")
        if (auto a = body_of<wire::Applied>(f)) applied.push_back(std::move(*a));
    }
    if (facts->size() < page) break;
  }
  learned::Outcome out;
  const auto about = wire::parse(result.about);
  out.id = result.id;
  if (about) out.who = {text_at(*about, "person"), text_at(*about, "by")};
  out.head = read->visit.head;
  out.steps = steps_of(mixed, applied, read->visit.bowls);
  if (out.steps.empty()) return one("result_without_bowls");
  out.shelf = read->visit.shelf;
  for (const wire::ReachedZone& z : told->zones)
    out.zones.push_back({z.zone, z.level, z.measured, !z.measured && as_foreseen(told->foreseen, z)});
  return out;
}

void Learning::take(const store::Fact& result) {
  const auto asked = outcome(result);
  const auto said = asked.and_then([&](const learned::Outcome& o) {
    // Taken out: it is still told what was expected.
    learned::Model aside = lesson_->model;
    return without_.contains(result.id) ? aside.take(o) : lesson_->model.take(o);
  });
  if (!said) {
    lesson_->unread.emplace_back(result.id, said.error());
    return;
  }
  for (const learned::Said& s : *said)
    lesson_->results.push_back({s, result.id, result.stream, asked->who.person, asked->who.colourist, result.made_at,
                                without_.contains(result.id)});
}

// What was taken out and in again, and who was erased: after either, all is learned anew.
Result<void> Learning::read_choices() {
  std::int64_t newest = choices_;
  for (const char* kind : {without_kind, erased_kind}) {
    for (std::int64_t after = choices_;;) {
      const auto facts = world_.store->facts({.after = after, .stream = "", .key = "", .kind = kind, .limit = page});
      if (!facts) return problem_of(facts.error());
      for (const store::Fact& f : *facts) {
        after = f.store_seq;
        const auto body = wire::parse(f.body);
        if (f.kind != without_kind || !body) continue;
        if (body->value("without", false))
          without_.insert(text_at(*body, "result"));
        else
          without_.erase(text_at(*body, "result"));
      }
      newest = std::max(newest, after);
      if (facts->size() < page) break;
    }
  }
  if (newest != choices_) choices_ = newest, read_ = 0;
  return {};
}

// A result that another one corrects is not learned from; where it was, all are learned anew.
Result<void> Learning::read_results() {
  for (const std::string& visit : drafts_) {
    const auto end = end_of(world_, visit);
    if (!end) return tl::unexpected(end.error());
    if (*end) read_ = 0;
  }
  if (read_ == 0) drafts_.clear();
  std::vector<store::Fact> fresh;
  std::int64_t after = read_;
  for (;;) {
    const auto facts =
        world_.store->facts({.after = after, .stream = "", .key = "", .kind = result_kind, .limit = page});
    if (!facts) return problem_of(facts.error());
    for (const store::Fact& f : *facts) after = f.store_seq, fresh.push_back(f);
    if (facts->size() < page) break;
  }
  if (fresh.empty() && read_ > 0) return {};
  std::set<std::string> corrected;
  for (const store::Fact& f : fresh)
    if (const auto body = f.closed ? std::nullopt : body_of<wire::VisitResult>(f); body && !body->corrects.empty())
      corrected.insert(body->corrects);
  if (read_ > 0 && !corrected.empty()) {
    read_ = 0;
    return read_results();
  }
  if (read_ == 0) lesson_ = std::make_shared<Lesson>();
  // Whoever holds the lesson of before keeps it as it was.
  else if (lesson_.use_count() > 1)
    lesson_ = std::make_shared<Lesson>(*lesson_);
  for (const store::Fact& f : fresh)
    if (!f.closed && !corrected.contains(f.id)) take(f);
  read_ = after;
  return {};
}

Result<std::shared_ptr<const Lesson>> Learning::now() {
  const std::scoped_lock held(lock_);
  return read_choices().and_then([&] { return read_results(); }).map([&]() -> std::shared_ptr<const Lesson> {
    return lesson_;
  });
}

Result<void> Learning::set_without(const std::string& result, bool without, const std::string& by) {
  const auto lesson = now();
  if (!lesson) return tl::unexpected(lesson.error());
  const bool there = std::any_of((*lesson)->results.begin(), (*lesson)->results.end(),
                                 [&](const LearnedResult& r) { return r.result == result; });
  if (!there) return one("result_not_found", "id", result);
  wire::Json about = wire::Json::object();
  if (!by.empty()) about["by"] = by;
  const auto kept = world_.store->append({.id = world_.new_id(),
                                          .stream = stream,
                                          .after_seq = store::NewFact::at_the_end,
                                          .made_at = world_.now(),
                                          .kind = without_kind,
                                          .body = wire::print({{"result", result}, {"without", without}}),
                                          .about = wire::print(about)});
  if (!kept) return problem_of(kept.error());
  return {};
}

}  // namespace strandline::salon
