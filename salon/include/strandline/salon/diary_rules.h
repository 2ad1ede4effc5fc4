// How visits are planned: figures of knowledge/policy/diary.json, each with its source there.
#pragma once

#include "strandline/result.h"
#include "strandline/wire/json.h"

namespace strandline::salon {

struct DiaryRules {
  int opens_min = 0, closes_min = 0;  // after midnight
  int grid_min = 0, late_min = 0;     // min
  int test_lead_h = 0;                // from the test to the colour
  int test_min = 0;
  int call_days = 0;
};

// Problems: missing_key {key}, out_of_range {value, min, max} with the key as path.
Result<DiaryRules> read_diary_rules(const wire::Json& json);

}  // namespace strandline::salon
