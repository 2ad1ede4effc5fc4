#include "answers.h"

namespace strandline::server {

std::uint64_t Answers::changes() {
  const std::lock_guard lock(mutex_);
  return changes_;
}

std::optional<std::string> Answers::find(const std::string& question) {
  const std::lock_guard lock(mutex_);
  const auto place = places_.find(question);
  if (place == places_.end()) return std::nullopt;
  kept_.splice(kept_.begin(), kept_, place->second);
  return kept_.front().answer;
}

void Answers::keep(const std::string& question, const std::string& answer, std::uint64_t changes) {
  constexpr std::size_t of_one = 8;
  const std::lock_guard lock(mutex_);
  if (changes != changes_ || places_.contains(question)) return;
  Kept fresh{question, answer};
  if (size(fresh) > bytes_max_ / of_one) return;
  bytes_ += size(fresh);
  kept_.push_front(std::move(fresh));
  places_[question] = kept_.begin();
  while (bytes_ > bytes_max_) {
    bytes_ -= size(kept_.back());
    places_.erase(kept_.back().question);
    kept_.pop_back();
  }
}

void Answers::forget() {
  const std::lock_guard lock(mutex_);
  ++changes_;
  kept_.clear();
  places_.clear();
  bytes_ = 0;
}

}  // namespace strandline::server
