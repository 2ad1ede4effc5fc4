// formulate.head.ms: whole invented heads, five areas × two spans, at most four bowls, demo shelf, two threads, other
// ways included.

#include "invented.h"
#include "measure.h"
#include "strandline/salon/knowledge.h"
#include "strandline/salon/workers.h"

int main() {
  using namespace strandline;
  const auto house = salon::open_house({});
  if (!house) return 1;
  const Shelf& shelf = house->demo;
  salon::Workers workers(2);
  FormulateOptions options;
  options.parallel = workers.parallel_for();
  constexpr int kHeads = 20;
  std::vector<double> ms;
  int exact = 0, close = 0, bowls = 0;
  for (int h = 0; h < kHeads; ++h) {
    const scoreboard::Wanted wanted = scoreboard::invented_head(static_cast<std::uint64_t>(h));
    const auto targets = aim(wanted.head, wanted.wishes, shelf);
    if (!targets) return 1;
    ms.push_back(scoreboard::median_ms(1, [&] {
      const auto plan = formulate(wanted.head, *targets, shelf, house->policy.formula, options);
      if (!plan) std::exit(1);
      // Certified is the objective without the price of unevenness (docs/model.md).
      exact += plan->report.gap - plan->report.uneven <= 1e-6;
      close += plan->report.gap <= 0.05 * plan->report.objective;
      bowls += static_cast<int>(plan->bowls.size());
    }));
  }
  std::sort(ms.begin(), ms.end());
  char note[200];
  std::snprintf(note, sizeof note,
                "median of %d heads, five areas x two spans, at most four bowls (%.1f on average), demo shelf, two "
                "threads; worst %.0f ms; exact but for unevenness on %d, gap at most 5 %% on %d",
                kHeads, static_cast<double>(bowls) / kHeads, ms.back(), exact, close);
  scoreboard::print({{"formulate.head.ms", ms[ms.size() / 2], "ms", note}});
}
