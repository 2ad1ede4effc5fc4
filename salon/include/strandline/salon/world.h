// Every effect that the use cases have, in one value; tests hand in their own.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include "strandline/store/store.h"

namespace strandline::salon {

struct World {
  std::function<std::string()> now;     // UTC, 2026-03-09T09:00:00Z
  std::function<std::string()> new_id;  // 22 letters and digits, never the same twice
  std::shared_ptr<store::Store> store;
};

// The clock and the random device of this machine, and the salon file at `path`.
store::Expected<World> real_world(const std::string& path);

}  // namespace strandline::salon
