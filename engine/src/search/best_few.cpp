#include "search/best_few.h"

#include <algorithm>

namespace strandline {

void BestFew::offer(const Candidate& c) {
  if (c.objective > limit_) return;
  kept_.push_back(c);
  if (kept_.size() >= 4 * keep_) trim();
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
  if (kept_.size() < keep_) return;
  limit_ = std::min(limit_, kept_[keep_ - 1].objective + kRounding);
  const auto end = std::find_if(kept_.begin() + static_cast<long>(keep_), kept_.end(),
                                [&](const Candidate& c) { return c.objective > limit_; });
  kept_.erase(std::min(end, kept_.begin() + static_cast<long>(std::min(3 * keep_, kept_.size()))), kept_.end());
}

}  // namespace strandline
