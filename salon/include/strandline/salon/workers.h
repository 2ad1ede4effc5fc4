// Threads for the engine's ParallelFor. The engine itself knows no thread.
#pragma once

#include <condition_variable>
#include <deque>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

#include "strandline/formulate.h"

namespace strandline::salon {

// A fixed number of threads that share every running job; the caller works on its own job too, so a job
// always ends even when all threads are busy elsewhere. Safe from many threads at once. The first exception
// of a body is thrown to its caller after the running pieces have ended.
class Workers {
 public:
  // `threads` counts the caller: 1 = serial. `behind`: its own threads give way to all others (desk.h).
  explicit Workers(int threads = 2, bool behind = false);
  ~Workers();
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;

  void run(int count, const std::function<void(int begin, int end)>& body);
  // Valid as long as this object.
  ParallelFor parallel_for();

 private:
  struct Job;
  void work();

  int threads_;
  bool behind_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::deque<std::shared_ptr<Job>> jobs_;
  bool stopping_ = false;
  std::vector<std::thread> pool_;
};

}  // namespace strandline::salon
