// Where heavy questions wait for their turn, so that a burst of them leaves the quick ones quick.
#pragma once

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <list>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace strandline::salon {

// A fixed number of threads of its own, which give way to every other thread of the machine. Each kind of question gets
// a place in turn and within a kind who came first, so that no plan waits behind a crowd that asks for something else.
// Safe from many threads at once.
class Desk {
 public:
  // done: the work ran to its end · full: as many wait as may · left: `gone` before a place was free.
  enum class End { done, full, left };
  using Gone = std::function<bool()>;

  Desk(int places, int waiting_most);
  // Waits for the work that runs.
  ~Desk();
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  // Runs `work` when its turn has come and waits for it. `gone` is asked a few times a second, by the caller's thread;
  // once it is true a waiting question is given up, and work that runs is told so when it asks (any thread, cheap).
  // What `work` throws is thrown here.
  End ask(const std::string& kind, const std::function<void(const Gone& unwanted)>& work, const Gone& gone);

  // How it stands now, and what was asked since the start by how it ended; work that threw is done.
  struct Load {
    int running = 0, waiting = 0;
    std::uint64_t done = 0, refused = 0, left = 0;
  };
  Load load() const;

 private:
  struct Question;
  void serve();
  std::shared_ptr<Question> next();  // requires the lock and somebody waiting

  const int waiting_most_;
  mutable std::mutex mutex_;
  std::condition_variable came_;
  std::map<std::string, std::list<std::shared_ptr<Question>>> waiting_;
  std::deque<std::string> order_;  // of the kinds that wait, whose turn it is first
  Load load_;
  bool closing_ = false;
  std::vector<std::thread> places_;
};

// This thread gives way to the others from now on. Where that cannot be had nothing changes but quickness under load.
void give_way();

}  // namespace strandline::salon
