// Branch and bound over sequences, hands and mixes of one visit.
#pragma once

#include <compare>
#include <optional>
#include <unordered_map>
#include <vector>

#include "schedule/layout.h"

namespace strandline {

inline constexpr int kHorizon = static_cast<int>(24 * 60 * kTicksPerMinute);

struct Cost {
  int ticks = kNever;  // plan length with the price of pairs out of order
  int extras = kNever;
  auto operator<=>(const Cost&) const = default;
};

struct Child {
  Layout layout;
  int bound;
};

// The shortest plan, or the best one for a fixed basin time; stops after `budget` nodes.
class Search {
 public:
  // `basin` fixed, or kNever to look for the shortest.
  Search(const Instance& instance, int basin, long budget) : instance_(instance), basin_(basin), budget_(budget) {
    if (basin != kNever) limit_ = basin;
  }

  // Starts from a known plan, given as its jobs in the order they were laid.
  void seed(const std::vector<Job>& jobs) {
    Layout layout(instance_, basin_);
    bool laid = true;
    for (const auto& job : jobs) laid = laid && layout.lay(job, limit());
    if (!laid) return;
    const auto cost = cost_of(layout.furthest(), layout);
    if (cost < best_cost_) best_cost_ = cost, best_ = std::move(layout);
  }

  void run() {
    const Layout root(instance_, basin_);
    const int least = bound(root);
    int bowls_used = 0;
    for (std::size_t b = 0; b < instance_.bowls.size(); ++b) bowls_used += uses(root, static_cast<int>(b));
    goal_ = {basin_ == kNever ? least : basin_, bowls_used};
    if (least <= limit_) descend(root);
  }

  const std::optional<Layout>& best() const { return best_; }
  Cost cost() const { return best_cost_; }
  bool stopped() const { return stopped_; }
  long nodes() const { return nodes_; }

 private:
  bool uses(const Layout& layout, int bowl) const;
  int bound(const Layout& layout) const;
  bool dominated(const Layout& layout);
  void finish(const Layout& layout);
  void descend(const Layout& layout);
  void add(std::vector<Child>& children, Layout&& layout, bool laid);
  void add_applications(std::vector<Child>& children, const Layout& layout);
  bool eligible(const Layout& layout, int app) const;
  bool may_leave(const Layout& layout, int app) const;
  bool may_stay(const Layout& layout, int app) const;
  bool twin_hands(const Layout& layout, int person) const;

  // Longest plan still worth finding.
  int limit() const {
    if (basin_ != kNever || best_cost_.ticks == kNever) return limit_;
    return std::min(limit_, best_cost_.ticks);
  }

  Cost cost_of(int ticks, const Layout& layout) const {
    return {(basin_ == kNever ? ticks : basin_) + layout.inversions() * instance_.soft_cost, layout.extras()};
  }

  const Instance& instance_;
  int basin_;
  long budget_;
  int limit_ = kHorizon;
  Cost goal_, best_cost_;
  std::optional<Layout> best_;
  bool stopped_ = false;
  long nodes_ = 0;
  std::unordered_map<std::uint64_t, std::vector<std::vector<int>>> seen_;
  std::vector<int> signature_;
};

}  // namespace strandline
