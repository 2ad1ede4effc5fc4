// What really happened to a task of a running visit.
#pragma once

#include <string>

namespace strandline {

enum class Marked {
  started,   // the task began at `at_min`
  done,      // it ended then
  left_out,  // an application that is not wanted any more
  ran_out    // a mix is empty: what still needs it gets a fresh one
};

struct Mark {
  std::string task;  // as in Timeline::tasks
  Marked what = Marked::done;
  double at_min = 0;
};

}  // namespace strandline
