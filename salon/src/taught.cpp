#include "strandline/salon/taught.h"

#include <algorithm>
#include <set>

#include "answered.h"
#include "generated/learning.h"
#include "strandline/wire/answer.h"

namespace strandline::salon {

namespace {

using wire::Json;

// The bowls of an answer, as steps on the hair.
std::vector<Step> steps_in(const Json& answer, const Visit& visit) {
  std::vector<Step> steps;
  if (!visit.bowls.empty()) {
    for (const Bowl& b : by_step(visit.bowls)) steps.push_back({b.formula, b.zones, {}});
    return steps;
  }
  const auto bowls = answer.find("bowls");
  if (bowls == answer.end() || !bowls->is_array()) return steps;
  for (const Json& b : *bowls) {
    if (!b.contains("range") || !b.contains("parts") || !b.contains("zones")) continue;
    Step step;
    step.formula.range = b["range"].get<std::string>();
    step.formula.minutes = b.value("minutes", 0.0);
    step.formula.damp_hair = b.value("damp_hair", false);
    for (const Json& part : b["parts"])
      step.formula.parts.push_back({part.value("product", std::string()), part.value("grams", 0.0)});
    for (const Json& zone : b["zones"]) step.zones.push_back(zone.get<std::string>());
    steps.push_back(std::move(step));
  }
  return steps;
}

bool earned(const learned::Model& model, const std::vector<std::string>& ranges) {
  constexpr double kLeast = 0.75;  // of nine tenths; with twelve results 0.9 stays above it nineteen times in twenty
  const auto enough = static_cast<int>(learned::Priors{}.results_for_likelihood);
  return !ranges.empty() && std::all_of(ranges.begin(), ranges.end(), [&](const std::string& range) {
    return model.results(range) >= enough && model.within(range) >= kLeast;
  });
}

void show_likelihoods(Json& node, const std::set<std::string>& zones) {
  if (node.is_array())
    for (Json& each : node) show_likelihoods(each, zones);
  if (!node.is_object()) return;
  const auto landing = node.find("landing");
  if (landing != node.end() && landing->is_object() && zones.contains(node.value("zone", std::string())))
    (*landing)["show_number"] = true, (*landing)["simulated"] = false;
  for (auto& [key, value] : node.items())
    if (key == "zones") show_likelihoods(value, zones);
}

void add_taught(Json& answer, const Visit& visit, const Taught& taught) {
  const learned::Model& model = taught.lesson->model;
  learned::Outcome asked;
  asked.who = {taught.person, taught.colourist};
  asked.head = visit.head, asked.shelf = visit.shelf, asked.steps = steps_in(answer, visit);
  if (asked.steps.empty()) return;
  const auto said = model.expected(asked);
  if (!said) return;
  Json zones = Json::array();
  std::set<std::string> ranges, with_number;
  for (const learned::Said& s : *said) {
    int results = 0;
    for (const std::string& range : s.ranges) results += model.results(range), ranges.insert(range);
    zones.push_back({{"zone", s.zone},
                     {"untaught", s.untaught},
                     {"expected", s.expected},
                     {"low", s.low},
                     {"high", s.high},
                     {"results", results}});
    if (earned(model, s.ranges)) with_number.insert(s.zone);
  }
  std::vector<learned::Factor> factors = model.factors(taught.person);
  for (const learned::Factor& f : model.factors()) {
    const bool here = f.whose == learned::Whose::salon || (f.whose == learned::Whose::range && ranges.contains(f.id)) ||
                      (f.whose == learned::Whose::colourist && f.id == taught.colourist);
    if (here) factors.push_back(f);
  }
  answer["learned"] = {{"zones", std::move(zones)},
                       {"words", wire::problems_json(learned::in_words(factors))["problems"]}};
  show_likelihoods(answer, with_number);
}

}  // namespace

Result<wire::Json> answer(std::string_view verb, const wire::Json& document, const wire::Sources& sources,
                          const Effort& effort, const Beside& beside, const Taught& taught) {
  if (taught.lesson->results.empty()) return answer(verb, document, sources, effort, beside);
  Visit as_asked;
  Turns turns;
  turns.before = [&](Visit& visit) {
    as_asked = visit;
    visit.shelf = learned::as_known(std::move(visit.shelf), taught.lesson->model, taught.person);
  };
  turns.after = [&](Json& out) {
    if (verb == "predict" || verb == "formulate" || verb == "plan" || verb == "what-if")
      add_taught(out, as_asked, taught);
  };
  return answered(verb, document, sources, effort, beside, turns);
}

}  // namespace strandline::salon
