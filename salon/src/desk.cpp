#include "strandline/salon/desk.h"

#include <sys/resource.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <exception>

namespace strandline::salon {

void give_way() {
#ifdef __linux__
  constexpr int behind = 4, last = 19;  // four steps: two fifths of the share of a thread that does not give way
  constexpr id_t this_thread = 0;       // on Linux
  setpriority(PRIO_PROCESS, this_thread, std::min(last, getpriority(PRIO_PROCESS, this_thread) + behind));
#endif
}

struct Desk::Question {
  const std::function<void(const Gone&)>* work = nullptr;
  std::condition_variable ended;
  std::atomic<bool> unwanted = false;
  bool begun = false, over = false;
  std::exception_ptr failure;
};

Desk::Desk(int places, int waiting_most) : waiting_most_(waiting_most) {
  for (int i = 0; i < std::max(1, places); ++i) places_.emplace_back([this] { serve(); });
}

Desk::~Desk() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
  }
  came_.notify_all();
  for (std::thread& place : places_) place.join();
}

Desk::End Desk::ask(const std::string& kind, const std::function<void(const Gone&)>& work, const Gone& gone) {
  constexpr std::chrono::milliseconds look_again{50};
  const auto mine = std::make_shared<Question>();
  mine->work = &work;
  std::unique_lock lock(mutex_);
  if (load_.waiting >= waiting_most_) {
    ++load_.refused;
    return End::full;
  }
  std::list<std::shared_ptr<Question>>& line = waiting_[kind];
  if (line.empty()) order_.push_back(kind);
  line.push_back(mine);
  ++load_.waiting;
  came_.notify_one();
  while (!mine->ended.wait_for(lock, look_again, [&] { return mine->over; })) {
    lock.unlock();
    if (gone()) mine->unwanted = true;
    lock.lock();
    if (!mine->unwanted || mine->begun) continue;
    std::erase(line, mine);
    if (line.empty()) std::erase(order_, kind);
    --load_.waiting;
    ++load_.left;
    return End::left;
  }
  if (mine->failure) std::rethrow_exception(mine->failure);
  return End::done;
}

Desk::Load Desk::load() const {
  const std::lock_guard lock(mutex_);
  return load_;
}

std::shared_ptr<Desk::Question> Desk::next() {
  const std::string kind = order_.front();
  order_.pop_front();
  std::list<std::shared_ptr<Question>>& line = waiting_[kind];
  std::shared_ptr<Question> first = line.front();
  line.pop_front();
  if (!line.empty()) order_.push_back(kind);
  --load_.waiting;
  ++load_.running;
  first->begun = true;
  return first;
}

void Desk::serve() {
  give_way();
  std::unique_lock lock(mutex_);
  for (;;) {
    came_.wait(lock, [&] { return closing_ || load_.waiting > 0; });
    if (closing_) return;
    const std::shared_ptr<Question> question = next();
    lock.unlock();
    try {
      (*question->work)([question] { return question->unwanted.load(); });
    } catch (...) {
      question->failure = std::current_exception();
    }
    lock.lock();
    --load_.running;
    ++load_.done;
    question->over = true;
    question->ended.notify_all();
  }
}

}  // namespace strandline::salon
