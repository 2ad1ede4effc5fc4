#include "formulate/best_few.h"

#include <algorithm>

namespace strandline {

void BestFew::offer(const Candidate& c) {
  if (c.objective > limit_) return;
  kept_.push_back(c);
  if (kept_.size() >= 4 * kKept) trim();
}

void BestFew::merge(const BestFew& other) {
  for (const Candidate& c : other.kept_) offer(c);
}

std::vector<Candidate> BestFew::take() {
  trim();
  return std::move(kept_);
}

void BestFew::trim() {
  std::sort(kept_.begin(), kept_.end(), before);
  if (kept_.size() < kKept) return;
  limit_ = std::min(limit_, kept_[kKept - 1].objective + kRounding);
  const auto end =
      std::find_if(kept_.begin() + kKept, kept_.end(), [&](const Candidate& c) { return c.objective > limit_; });
  kept_.erase(std::min(end, kept_.begin() + std::min<long>(3 * kKept, static_cast<long>(kept_.size()))), kept_.end());
}

}  // namespace strandline
