// Reads the whole salon file, at once and then every day, in a thread of its own.
#pragma once

#include <chrono>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <thread>

#include "strandline/result.h"
#include "strandline/store/store.h"

namespace strandline::salon {

class Watch {
 public:
  // `tell` hears, in that thread, what a reading finds: once, until it finds something else.
  Watch(std::shared_ptr<store::Store> store, std::function<void(const Problems&)> tell,
        std::chrono::milliseconds every = std::chrono::hours(24));
  // Breaks off a reading.
  ~Watch();
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;

  // Of the last reading that came to its end: entry_broken {seq}, store_damaged, store_moved; nothing when all is
  // whole, or not read yet.
  Problems found() const;

 private:
  void run(const std::stop_token& stop);

  std::shared_ptr<store::Store> store_;
  std::function<void(const Problems&)> tell_;
  std::chrono::milliseconds every_;
  mutable std::mutex mutex_;
  Problems found_;
  std::condition_variable_any asked_;
  std::jthread thread_;
};

}  // namespace strandline::salon
