#include "strandline/salon/workers.h"

#include <algorithm>
#include <exception>

#include "strandline/salon/desk.h"

namespace strandline::salon {

// A loop cut into pieces; whoever has time takes the next one.
struct Workers::Job {
  Job(int n, int size, const std::function<void(int, int)>& f) : count(n), piece(size), body(&f) {}

  // False when nothing is left to take.
  bool take_piece() {
    std::unique_lock lock(mutex);
    if (next >= count) return false;
    const int begin = next;
    next = std::min(count, next + piece);
    const int end = next;
    ++running;
    lock.unlock();
    std::exception_ptr error;
    try {
      (*body)(begin, end);
    } catch (...) {
      error = std::current_exception();
    }
    lock.lock();
    if (error && !failure) {
      failure = error;
      next = count;
    }
    if (--running == 0) idle.notify_all();
    return true;
  }

  void finish() {
    std::unique_lock lock(mutex);
    idle.wait(lock, [&] { return running == 0 && next >= count; });
    if (failure) std::rethrow_exception(failure);
  }

  const int count, piece;
  const std::function<void(int, int)>* body;
  std::mutex mutex;
  std::condition_variable idle;
  int next = 0, running = 0;
  std::exception_ptr failure;
};

Workers::Workers(int threads, bool behind) : threads_(std::max(1, threads)), behind_(behind) {
  for (int i = 1; i < threads_; ++i) pool_.emplace_back([this] { work(); });
}

Workers::~Workers() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  wake_.notify_all();
  for (std::thread& thread : pool_) thread.join();
}

void Workers::run(int count, const std::function<void(int, int)>& body) {
  if (count <= 0) return;
  if (threads_ == 1 || count == 1) return body(0, count);
  constexpr int pieces_per_thread = 4;
  const int piece = std::max(1, count / (threads_ * pieces_per_thread));
  const auto job = std::make_shared<Job>(count, piece, body);
  {
    const std::lock_guard lock(mutex_);
    jobs_.push_back(job);
  }
  wake_.notify_all();
  while (job->take_piece()) {
  }
  {
    const std::lock_guard lock(mutex_);
    std::erase(jobs_, job);
  }
  job->finish();
}

ParallelFor Workers::parallel_for() {
  return [this](int count, const std::function<void(int, int)>& body) { run(count, body); };
}

void Workers::work() {
  if (behind_) give_way();
  for (;;) {
    std::shared_ptr<Job> job;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [&] { return stopping_ || !jobs_.empty(); });
      if (stopping_) return;
      job = jobs_.front();
      jobs_.pop_front();
      jobs_.push_back(job);  // the next thread looks at the next job
    }
    if (!job->take_piece()) {
      const std::lock_guard lock(mutex_);
      std::erase(jobs_, job);
    }
  }
}

}  // namespace strandline::salon
