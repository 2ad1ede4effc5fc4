#include "strandline/salon/verbs.h"

#include <chrono>
#include <sstream>
#include <vector>

#include "answered.h"
#include "strandline/as_it_went.h"
#include "strandline/line.h"
#include "strandline/treatment.h"

namespace strandline::salon {

namespace {

// A search that takes longer is stopped and says how far from the best it may be.
constexpr double kSearchSeconds = 120;

using Clock = std::chrono::steady_clock;

double seconds_of(const wire::ReadVisit& asked) { return asked.options.seconds.value_or(kSearchSeconds); }

// Thrown through the engine, which holds nothing that is not given back, when no answer will be given.
struct Stopped {
  Problem why;
};

Problem out_of_time(double seconds) {
  std::ostringstream figure;
  figure << seconds;
  return {"out_of_time", "/options/seconds", {{"seconds", figure.str()}}};
}

// The same effort, ended by Stopped when nobody waits or the time for tidying up after a stopped search is over too.
Effort bounded(const wire::ReadVisit& asked, const Effort& effort) {
  const double seconds = seconds_of(asked);
  // By choice: a stopped search still predicts its bowls, and the machine may be busy.
  const auto last = Clock::now() + std::chrono::duration<double>(1.5 * seconds + 1.5);
  const auto look = [last, seconds, unwanted = effort.cancelled] {
    if (unwanted()) throw Stopped{{"given_up", "", {}}};
    if (Clock::now() >= last) throw Stopped{out_of_time(seconds)};
    return false;
  };
  return {[look, parallel = effort.parallel](int count, const std::function<void(int, int)>& body) {
            look();
            parallel(count, [&](int begin, int end) {
              for (int i = begin; i < end; ++i) {
                look();
                body(i, i + 1);
              }
            });
          },
          look};
}

tl::unexpected<Problems> no_bowls() { return tl::unexpected(Problems{{"no_bowls", "/bowls", {}}}); }

FormulateOptions options(const wire::ReadVisit& asked, const Effort& effort) {
  const auto end = Clock::now() + std::chrono::duration<double>(seconds_of(asked));
  return {asked.options.scenarios.value_or(kSearchScenarios), effort.parallel,
          [end, stopped = effort.cancelled] { return stopped() || Clock::now() >= end; }};
}

// A search holds each kind of hair of each zone in every scenario under every setting of the shelf.
template <class Search>
auto searched(const wire::ReadVisit& asked, const Effort& effort, const Search& search)
    -> decltype(search(FormulateOptions{})) {
  constexpr std::size_t kMost = std::size_t{256} * kSearchScenarios;  // by choice: some hundred MB with the demo shelf
  std::size_t kinds = 0;
  for (const ZoneRef& zone : zones(asked.visit.head)) kinds += zone.span->populations.size();
  FormulateOptions how = options(asked, effort);
  if (kinds * static_cast<std::size_t>(how.scenarios) > kMost)
    return tl::unexpected(
        Problems{{"too_many_scenarios",
                  "/options/scenarios",
                  {{"scenarios", std::to_string(how.scenarios)}, {"max", std::to_string(kMost / kinds)}}}});
  return search(how);
}

// For answers that cannot say that a search was cut short: refused when it was.
template <class Search>
auto whole(const wire::ReadVisit& asked, const Effort& effort, const Search& search)
    -> decltype(search(FormulateOptions{})) {
  return searched(asked, effort, [&](const FormulateOptions& how) -> decltype(search(how)) {
    auto answer = search(how);
    if (answer && how.cancelled()) return tl::unexpected(Problems{out_of_time(seconds_of(asked))});
    return answer;
  });
}

PredictOptions report_options(const wire::ReadVisit& asked, const Effort& effort) {
  PredictOptions out;
  if (asked.options.scenarios) out.scenarios = *asked.options.scenarios;
  out.covered_contrast_levels = asked.visit.policy.formula.covered_contrast_levels;
  out.parallel = effort.parallel;
  return out;
}

std::vector<Step> own_steps(const Visit& visit) {
  std::vector<Step> steps;
  for (const Bowl& bowl : by_step(visit.bowls)) steps.push_back({bowl.formula, bowl.zones});
  return steps;
}

// Which readings and constants the spread of a plan comes from; left out of one that was stopped.
Result<Plan> with_doubt(Plan plan, const Visit& visit, const Effort& effort) {
  if (plan.report.stopped == "cancelled") return plan;
  return doubt_of(visit.head, steps_of(plan.bowls), visit.shelf, effort.parallel)
      .map([&](const std::vector<ZoneDoubt>& doubts) {
        for (ZonePlan& zone : plan.zones)
          for (const ZoneDoubt& d : doubts)
            if (d.zone == zone.result.zone) zone.result.doubt = d.shares;
        return std::move(plan);
      });
}

// A bowl that passes a rule is answered with the rule and no forecast.
Result<const Visit*> may_be_mixed(const Visit& visit) {
  const Verdicts all = with_bowls(visit);
  Problems passed;
  for (const Verdict& v : all.list)
    for (size_t i = 0; i < visit.bowls.size(); ++i)
      if (!v.bowl.empty() && visit.bowls[i].label == v.bowl)
        passed.push_back({"bowl_passes_rule", "/bowls/" + std::to_string(i), {{"bowl", v.bowl}, {"rule", v.rule}}});
  if (!passed.empty()) return tl::unexpected(std::move(passed));
  return &visit;
}

Result<std::vector<Target>> targets(const Visit& visit) {
  if (visit.aims.empty()) return std::vector<Target>{};
  return strandline::aim(visit.head, visit.aims, visit.shelf);
}

// The clock and its bowls put one bowl on a zone; a prediction takes any order of steps on it.
constexpr std::string_view kOneBowlAZone = "zone_in_two_bowls";

Result<const Visit*> one_bowl_a_zone(const Visit& visit) {
  Problems problems = check(visit);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return &visit;
}

}  // namespace

Result<wire::ReadVisit> open_visit(const wire::Json& document, const wire::Sources& sources) {
  return wire::read_visit(document, sources).and_then([&](wire::ReadVisit asked) -> Result<wire::ReadVisit> {
    Problems problems = check(asked.visit);
    std::erase_if(problems, [](const Problem& p) { return p.code == kOneBowlAZone; });
    if (!problems.empty()) return tl::unexpected(wire::place_in(document, std::move(problems)));
    if (asked.options.misread)
      if (auto head = misread(asked.visit.head, *asked.options.misread)) asked.visit.head = std::move(*head);
    line::complete(asked.visit.shelf);
    learn(asked.visit.shelf);
    return asked;
  });
}

Result<wire::AssessAnswer> assess(const wire::ReadVisit& asked) {
  return wire::view(strandline::assess(asked.visit.head));
}

Result<wire::AimAnswer> aim(const wire::ReadVisit& asked) {
  return targets(asked.visit).map([](const std::vector<Target>& t) { return wire::view(t); });
}

Result<wire::PredictAnswer> predict(const wire::ReadVisit& asked, const Effort& effort) {
  const Visit& visit = asked.visit;
  if (visit.bowls.empty()) return no_bowls();
  const auto wanted = targets(visit);
  if (!wanted) return tl::unexpected(wanted.error());
  PredictOptions how = report_options(asked, effort);
  const Verdicts told = with_bowls(visit);
  const bool open = strandline::may_be_mixed(told);
  how.attribute_doubt = open;
  const std::vector<Step> steps = open ? own_steps(visit) : std::vector<Step>{};
  // With what its strands tell.
  return strandline::predict(limited(visit).head, steps, visit.shelf, *wanted, how).map([&](const Prediction& p) {
    wire::PredictAnswer answer = wire::view(p, *wanted);
    answer.rules = wire::view(told);
    if (!open) answer.notes.push_back({"bowls_stopped_by_rules", "", {}});
    const Problems broken = stops(visit);
    answer.notes.insert(answer.notes.begin(), broken.begin(), broken.end());
    return answer;
  });
}

Result<wire::FadeAnswer> fade(const wire::ReadVisit& asked, const Habit& habit, const Effort& effort) {
  return may_be_mixed(asked.visit)
      .and_then(
          [&](const Visit* v) { return strandline::fade(v->head, on_the_clock(*v), v->shelf, habit, effort.parallel); })
      .map([](const Fading& f) { return wire::view(f); });
}

Result<wire::GrowAnswer> grow(const wire::ReadVisit& asked, const Effort& effort) {
  return may_be_mixed(asked.visit)
      .and_then([&](const Visit* v) { return strandline::grow(v->head, on_the_clock(*v), v->shelf, effort.parallel); })
      .map([](const Growth& g) { return wire::view(g); });
}

Result<wire::FormulateAnswer> formulate(const wire::ReadVisit& asked, const Effort& effort) {
  const Verdicts told = verdicts(asked.visit);
  const Visit visit = limited(asked.visit);
  const auto wanted = strandline::aim(visit.head, visit.aims, visit.shelf);
  if (!wanted) return tl::unexpected(wanted.error());
  return searched(asked, effort,
                  [&](const FormulateOptions& how) -> Result<Plan> {
                    if (told.go == Go::stopped)
                      return strandline::plan(visit, how).map([](VisitPlan p) { return std::move(p.plan); });
                    return strandline::formulate(visit.head, *wanted, visit.shelf, visit.policy.formula, how);
                  })
      .and_then([&](Plan p) { return with_doubt(std::move(p), visit, effort); })
      .map([&](const Plan& p) {
        wire::FormulateAnswer answer = wire::view(p, *wanted, visit.shelf);
        answer.rules = wire::view(told);
        return answer;
      });
}

Result<Timeline> schedule(const wire::ReadVisit& asked, const Effort& effort) {
  const auto search = [&](const FormulateOptions& how) { return strandline::plan(asked.visit, how); };
  const auto planned =
      asked.visit.bowls.empty()
          ? searched(asked, effort, search)
          : may_be_mixed(asked.visit)
                .and_then([](const Visit* v) { return one_bowl_a_zone(*v); })
                .and_then([&](const Visit* v) { return strandline::what_if(*v, report_options(asked, effort)); });
  return planned.map([](const VisitPlan& p) { return p.timeline; });
}

Result<Replanned> replan(const wire::ReadVisit& asked) {
  if (!asked.running) return tl::unexpected(Problems{{"not_begun", "/running", {}}});
  return strandline::replan(asked.visit, *asked.running, asked.options.now_min);
}

Result<wire::PlanAnswer> plan(const wire::ReadVisit& asked, const Effort& effort) {
  const auto search = [&](const FormulateOptions& how) { return strandline::plan(asked.visit, how); };
  return searched(asked, effort, search).and_then([&](VisitPlan p) {
    return with_doubt(std::move(p.plan), asked.visit, effort).map([&](Plan with) {
      p.plan = std::move(with);
      return wire::view(p, asked.visit.shelf);
    });
  });
}

Result<wire::ReachAnswer> reach(const wire::ReadVisit& asked, const Effort& effort) {
  const Visit visit = limited(asked.visit);
  return strandline::reach(visit.head, visit.shelf, visit.policy.formula, effort.parallel)
      .map([&](const std::vector<ZoneReach>& zones) {
        wire::ReachAnswer answer = wire::view(zones);
        answer.rules = wire::view(verdicts(asked.visit));
        return answer;
      });
}

Result<wire::ReviewAnswer> review(const wire::ReadVisit& asked, const Effort& effort) {
  const Verdicts told = with_bowls(asked.visit);
  const Visit visit = limited(asked.visit);
  return whole(asked, effort, [&](const FormulateOptions& how) { return strandline::review(visit, how); })
      .map([&](const Review& r) {
        wire::ReviewAnswer answer = wire::view(r);
        answer.rules = wire::view(told);
        if (!strandline::may_be_mixed(told)) answer.reactions.clear();
        for (wire::BowlReviewView& b : answer.bowls)
          for (const Verdict& v : told.list)
            if (v.bowl == b.label) {
              b.fine = false;
              b.broken.push_back({"bowl_passes_rule", "", {{"bowl", v.bowl}, {"rule", v.rule}}});
            }
        return answer;
      });
}

Result<wire::RemadeAnswer> convert(const wire::ReadVisit& asked, const std::string& range, const Effort& effort) {
  if (const auto open = may_be_mixed(asked.visit); !open) return tl::unexpected(open.error());
  const Visit visit = limited(asked.visit);
  return whole(asked, effort, [&](const FormulateOptions& how) { return strandline::convert(visit, range, how); })
      .map([&](const std::vector<Remade>& r) { return wire::view(r, asked.visit.shelf); });
}

Result<wire::RemadeAnswer> substitute(const wire::ReadVisit& asked, const std::string& product, const Effort& effort) {
  const EmptyTube tube{product, asked.options.weighed_g};
  if (const auto open = may_be_mixed(asked.visit); !open) return tl::unexpected(open.error());
  const Visit visit = limited(asked.visit);
  return whole(asked, effort, [&](const FormulateOptions& how) { return strandline::substitute(visit, tube, how); })
      .map([&](const std::vector<Remade>& r) { return wire::view(r, asked.visit.shelf); });
}

Result<wire::PlanAnswer> what_if(const wire::ReadVisit& asked, const Effort& effort) {
  if (asked.visit.bowls.empty()) return no_bowls();
  return one_bowl_a_zone(asked.visit)
      .and_then([&](const Visit* v) -> Result<VisitPlan> {
        const PredictOptions how = report_options(asked, effort);
        // A visit that is over is told in the times that happened, not in those that would be planned.
        if (!asked.running || !asked.running->ended_at) return strandline::what_if(*v, how);
        return strandline::replan(*v, *asked.running, *asked.running->ended_at).and_then([&](const Replanned& ran) {
          return strandline::as_it_went(*v, ran.timeline, how);
        });
      })
      .map([&](const VisitPlan& p) { return wire::view(p, asked.visit.shelf); });
}

namespace {

Result<wire::Json> answer_to(std::string_view verb, const wire::ReadVisit& asked, const Effort& effort,
                             const Beside& beside) {
  const auto json = [](const auto& value) { return wire::answer_json(value); };
  Result<wire::Json> out = tl::unexpected(Problems{{"unknown_verb", "", {{"verb", std::string(verb)}}}});
  if (verb == "assess") out = assess(asked).map(json);
  if (verb == "aim") out = aim(asked).map(json);
  if (verb == "predict") out = predict(asked, effort).map(json);
  if (verb == "formulate") out = formulate(asked, effort).map(json);
  if (verb == "schedule") out = schedule(asked, effort).map(json);
  if (verb == "replan") out = replan(asked).map(json);
  if (verb == "plan") out = plan(asked, effort).map(json);
  if (verb == "reach") out = reach(asked, effort).map(json);
  if (verb == "fade") out = fade(asked, asked.options.habit, effort).map(json);
  if (verb == "grow") out = grow(asked, effort).map(json);
  if (verb == "what-if") out = what_if(asked, effort).map(json);
  if (verb == "review") out = review(asked, effort).map(json);
  if (verb == "convert") out = convert(asked, beside.range, effort).map(json);
  if (verb == "substitute") out = substitute(asked, beside.product, effort).map(json);
  return out;
}

}  // namespace

Result<wire::Json> answered(std::string_view verb, const wire::Json& document, const wire::Sources& sources,
                            const Effort& effort, const Beside& beside, const Turns& turns) {
  auto asked = open_visit(document, sources);
  if (!asked) return tl::unexpected(asked.error());
  turns.before(asked->visit);
  Result<wire::Json> out;
  try {
    const Effort within = bounded(*asked, effort);
    within.cancelled();
    out = answer_to(verb, *asked, within, beside);
  } catch (const Stopped& stopped) {
    return tl::unexpected(Problems{stopped.why});
  }
  if (out) turns.after(*out);
  return out.map_error([&](Problems problems) { return wire::place_in(document, std::move(problems)); });
}

Result<wire::Json> answer(std::string_view verb, const wire::Json& document, const wire::Sources& sources,
                          const Effort& effort, const Beside& beside) {
  return answered(verb, document, sources, effort, beside, {});
}

}  // namespace strandline::salon
