#include "strandline/salon/diary_rules.h"

#include "figures.h"

namespace strandline::salon {

Result<DiaryRules> read_diary_rules(const wire::Json& json) {
  auto read = Figures::read(json);
  if (!read) return tl::unexpected(read.error());
  DiaryRules out;
  read->take("opens_min", out.opens_min, 0, 1439);
  read->take("closes_min", out.closes_min, 0, 1439);
  read->take("grid_min", out.grid_min, 5, 120);
  read->take("late_min", out.late_min, 0, 120);
  read->take("test_lead_h", out.test_lead_h, 1, 336);
  read->take("test_min", out.test_min, 5, 120);
  read->take("call_days", out.call_days, 1, 400);
  if (!read->problems().empty()) return tl::unexpected(read->problems());
  return out;
}

}  // namespace strandline::salon
