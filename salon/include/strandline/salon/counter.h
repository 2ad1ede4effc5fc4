// The scale of the mixing counter, listened to all the time in a thread of its own: whoever asks gets its newest word
// within milliseconds.
#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <string>
#include <thread>

#include "strandline/salon/scale.h"

namespace strandline::salon {

struct ScaleDevice {
  std::string device;  // as Scale::open wants it
  ScaleForm form = ScaleForm::sent;
  int baud = 9600;
};

// What the scale says now.
struct Weighed {
  std::int64_t seq = 0;  // rises with every change, from 1
  ScaleReading reading;  // the newest; 0 g and `fault` while `why` is not empty
  Problems why;          // cannot_read {file} · unknown_baud {baud} · scale_gone · scale_silent {file}
  bool operator==(const Weighed&) const = default;
};

class Counter {
 public:
  // A scale that says nothing for `quiet` is told as silent; one that cannot be had is tried again every `again`.
  explicit Counter(ScaleDevice device, std::chrono::milliseconds quiet = std::chrono::seconds(3),
                   std::chrono::milliseconds again = std::chrono::seconds(1));
  ~Counter();
  Counter(const Counter&) = delete;
  Counter& operator=(const Counter&) = delete;

  // The newest word, at once where it is another than that of `after`; else as soon as it changes, `most` at the
  // latest.
  Weighed next(std::int64_t after, std::chrono::milliseconds most) const;

 private:
  void run(const std::stop_token& stop);
  void listen(Scale& scale, const std::stop_token& stop);
  void say(const ScaleReading& reading, Problems why);

  ScaleDevice device_;
  std::chrono::milliseconds quiet_, again_;
  mutable std::mutex mutex_;
  mutable std::condition_variable_any changed_;
  Weighed now_;
  std::jthread thread_;  // the last: it uses all of the above
};

}  // namespace strandline::salon
