// Answers of heavy questions that may be asked again: a page that is opened twice, two devices at one visit.
#pragma once

#include <cstdint>
#include <list>
#include <mutex>
#include <optional>
#include <string>
#include <unordered_map>

namespace strandline::server {

// Which answers hold is decided by the content of the question and by what the salon knew; whatever changes that calls
// forget(). In memory only, the least recently asked go first. Safe from many threads at once.
class Answers {
 public:
  explicit Answers(std::size_t bytes_max) : bytes_max_(bytes_max) {}

  // How often something changed until now, for keep(): to be asked before anything is read that answers rest on.
  std::uint64_t changes();
  // The answer to a question that was asked before.
  std::optional<std::string> find(const std::string& question);
  // Not kept when something has changed since `changes`, or when it is larger than an eighth of the room.
  void keep(const std::string& question, const std::string& answer, std::uint64_t changes);
  // Something that answers rest on has changed.
  void forget();

 private:
  struct Kept {
    std::string question, answer;
  };
  static std::size_t size(const Kept& kept) { return kept.question.size() + kept.answer.size(); }

  const std::size_t bytes_max_;
  std::mutex mutex_;
  std::list<Kept> kept_;  // the last asked first
  std::unordered_map<std::string, std::list<Kept>::iterator> places_;
  std::size_t bytes_ = 0;
  std::uint64_t changes_ = 0;
};

}  // namespace strandline::server
