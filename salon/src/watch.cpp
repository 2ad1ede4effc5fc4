#include "strandline/salon/watch.h"

#include <new>

namespace strandline::salon {

namespace {

Problems read_whole(store::Store& store, const std::stop_token& stop) try {
  const auto broken = store.verify(stop);
  if (!broken) return {{broken.error().code, "", {{"detail", broken.error().detail}}}};
  if (*broken) return {{"entry_broken", "", {{"seq", std::to_string(**broken)}}}};
  return {};
} catch (const std::bad_alloc&) {
  return {{"memory_short", "", {}}};
}

// Of the file, not of this moment.
bool lasting(const Problems& found) {
  return found.empty() || (found.front().code != "store_unavailable" && found.front().code != "memory_short");
}

}  // namespace

Watch::Watch(std::shared_ptr<store::Store> store, std::function<void(const Problems&)> tell,
             std::chrono::milliseconds every)
    : store_(std::move(store)),
      tell_(std::move(tell)),
      every_(every),
      thread_([this](const std::stop_token& stop) { run(stop); }) {}

Watch::~Watch() = default;

Problems Watch::found() const {
  const std::lock_guard lock(mutex_);
  return found_;
}

void Watch::run(const std::stop_token& stop) {
  while (!stop.stop_requested()) {
    const Problems now = read_whole(*store_, stop);
    if (stop.stop_requested()) return;
    const Problems before = found();
    if (now != before && !now.empty() && tell_) tell_(now);
    std::unique_lock lock(mutex_);
    // A file that could not be read just then may be whole; whoever asks it now is told by the file itself.
    if (lasting(now)) found_ = now;
    asked_.wait_for(lock, stop, every_, [] { return false; });
  }
}

}  // namespace strandline::salon
