#include "strandline/salon/counter.h"

#include <algorithm>
#include <utility>

namespace strandline::salon {
namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

// A wait for the scale: as long as a stop of the server may take. By choice.
constexpr milliseconds kWait{50};

}  // namespace

Counter::Counter(ScaleDevice device, milliseconds quiet, milliseconds again)
    : device_(std::move(device)),
      quiet_(quiet),
      again_(again),
      thread_([this](const std::stop_token& stop) { run(stop); }) {}

Counter::~Counter() = default;

Weighed Counter::next(std::int64_t after, milliseconds most) const {
  std::unique_lock lock(mutex_);
  changed_.wait_for(lock, most, [&] { return now_.seq != after; });
  return now_;
}

void Counter::say(const ScaleReading& reading, Problems why) {
  {
    const std::lock_guard lock(mutex_);
    if (now_.seq > 0 && now_.reading == reading && now_.why == why) return;
    now_ = {now_.seq + 1, reading, std::move(why)};
  }
  changed_.notify_all();
}

void Counter::listen(Scale& scale, const std::stop_token& stop) {
  auto heard_at = Clock::now();
  while (!stop.stop_requested()) {
    const auto asked_at = Clock::now();
    const auto heard = scale.wait(kWait);
    if (!heard) return say({}, heard.error());
    if (!heard->empty()) {
      heard_at = Clock::now();
      // Stable and moving again within one read: what was booked must have been seen.
      for (const ScaleReading& reading : *heard) say(reading, {});
    } else if (Clock::now() - heard_at > quiet_) {
      say({}, {{"scale_silent", "", {{"file", device_.device}}}});
    }
    // One that answers at once is not asked without end.
    if (device_.form == ScaleForm::asked) std::this_thread::sleep_until(asked_at + kWait);
  }
}

void Counter::run(const std::stop_token& stop) {
  while (!stop.stop_requested()) {
    auto scale = Scale::open(device_.device, device_.form, device_.baud);
    if (scale)
      listen(*scale, stop);
    else
      say({}, scale.error());
    std::unique_lock lock(mutex_);
    changed_.wait_for(lock, stop, again_, [] { return false; });
  }
}

}  // namespace strandline::salon
