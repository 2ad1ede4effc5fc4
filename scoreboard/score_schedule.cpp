// replan.ms: the clock of a running visit planned anew after each of its marks; a salon waits ten milliseconds at most.
#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "engine/tests/schedule/visits.h"
#include "measure.h"
#include "schedule/carry_on.h"

int main() {
  using namespace strandline;
  // Five areas in two bowls with an assistant, and a lift of eight zones alone: the larger of the tests' visits.
  std::vector<double> all;
  for (const ScheduleRequest& request : {visits::two_bowls(), visits::virgin_lift()}) {
    const auto told = schedule(request);
    if (!told) return EXIT_FAILURE;
    Timeline now = *told;
    std::vector<std::string> left_out;
    long nodes = 30000;  // of one answer
    // Every task in turn is done, some late, some early.
    std::vector<TimelineTask> tasks;
    for (const TimelineTask& t : told->tasks)
      if (t.kind == TaskKind::mix || t.kind == TaskKind::apply) tasks.push_back(t);
    double at = 0;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      const auto task = std::ranges::find(now.tasks, tasks[i].id, &TimelineTask::id);
      if (task == now.tasks.end()) continue;
      at = std::max(at, task->end_min + (i % 3 == 0 ? 2 : i % 3 == 1 ? -1 : 0));
      const Mark mark{task->id, Marked::done, at};
      Result<CarriedOn> on = tl::unexpected(Problems{});
      all.push_back(scoreboard::median_ms(5, [&] {
        nodes = 30000;
        on = carry_on(request, now, &mark, at, left_out, nodes);
      }));
      if (!on) return EXIT_FAILURE;
      left_out.insert(left_out.end(), on->too_late.begin(), on->too_late.end());
      now = on->timeline;
    }
  }
  std::sort(all.begin(), all.end());
  scoreboard::print({{"replan.ms", all[all.size() / 2], "ms", "one mark, median over the marks of two large visits"},
                     {"replan.worst_ms", all.back(), "ms", "the slowest of these marks"}});
}
