// learn.update.ms: one result into the joint of a salon that has learned from a thousand; and all thousand anew.
#include "engine/src/evidence/learned_salon.h"
#include "measure.h"

int main() {
  using namespace strandline;
  constexpr int kPeople = 200, kVisits = 5, kRuns = 21;
  const auto records =
      simulate_salon(SalonWorld::outside, {.seed = 20261129, .people = kPeople, .visits = kVisits, .wrong_share = 0.1});
  std::vector<learned::Outcome> results;
  for (const auto& r : records) results.push_back(outcome_of(r));
  learned::Model model;
  const double replay = scoreboard::median_ms(1, [&] {
    for (const auto& o : results)
      if (!model.take(o)) std::printf("a result was refused\n");
  });
  size_t next = 0;
  const double update = scoreboard::median_ms(kRuns, [&] {
    learned::Model copy = model;
    if (!copy.take(results[next++ % results.size()])) std::printf("a result was refused\n");
  });
  scoreboard::print(
      {{"learn.update.ms", update, "ms", "one result of one zone, 200 people known; copy of the model included"},
       {"learn.replay.s", replay / 1000, "s", "1000 results of one zone each, one core"}});
}
