// The visit document: all that one visit's main job needs, in one value.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strandline/aim.h"
#include "strandline/facts.h"
#include "strandline/formulate.h"
#include "strandline/head.h"
#include "strandline/rules.h"
#include "strandline/schedule.h"
#include "strandline/shelf.h"

namespace strandline {

struct Policy {
  std::string id;
  FormulaPolicy formula;
  SchedulePolicy schedule;
  RulePolicy rules;
};

struct Visit {
  std::string client;     // a name of the salon's choosing; never used by the engine
  std::string date;       // civil date YYYY-MM-DD in the salon's zone
  std::string skin_test;  // civil date of the last skin test, empty = none recorded
  SkinTest test;          // what is known of it
  Answers answers;        // of the client, today
  Head head;
  std::vector<ZoneAim> aims;
  Shelf shelf;
  std::vector<Person> people;
  Policy policy;
  // The colourist's own bowls: when given, `predict` and `schedule` use them instead of formulating.
  std::vector<Bowl> bowls;
};

}  // namespace strandline
