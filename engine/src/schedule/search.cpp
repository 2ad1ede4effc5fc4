#include "schedule/search.h"

#include <algorithm>
#include <unordered_map>

#include "schedule/tail.h"

namespace strandline {
namespace {

constexpr int kHorizon = static_cast<int>(24 * 60 * kTicksPerMinute);

struct Cost {
  int ticks = kNever;  // plan length with the price of pairs out of order
  int extras = kNever;
  auto operator<=>(const Cost&) const = default;
};

struct Child {
  Layout layout;
  int bound;
};

class Search {
 public:
  // `basin` fixed, or kNever to look for the shortest.
  Search(const Instance& instance, int basin, long budget)
      : instance_(instance), basin_(basin), budget_(budget) {
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

// Whether the bowl still needs a mix before anything that is left or open.
bool Search::uses(const Layout& layout, int bowl) const {
  if (layout.open_batch(bowl) >= 0) return true;
  for (std::size_t i = 0; i < instance_.apps.size(); ++i)
    if (!layout.placed(static_cast<int>(i)) && instance_.apps[i].bowl == bowl) return true;
  return false;
}

// Least length of any plan that completes this layout: work over the hands that can do it.
int Search::bound(const Layout& layout) const {
  int applying = 0, first = layout.first_application(), opening = kNever;
  for (std::size_t i = 0; i < instance_.apps.size(); ++i) {
    if (layout.placed(static_cast<int>(i))) continue;
    const auto& app = instance_.apps[i];
    applying += app.fastest;
    first = std::max(first, app.develop + app.fastest);
  }
  // [opening] the very first application waits for its mix
  for (const auto& app : instance_.apps) opening = std::min(opening, instance_.bowls[app.bowl].minutes);
  int mixing = 0;
  for (std::size_t b = 0; b < instance_.bowls.size(); ++b)
    if (uses(layout, static_cast<int>(b))) mixing += instance_.bowls[b].minutes;

  int appliers = 0, applier_free = 0, hands = 0, hands_free = 0;
  for (std::size_t p = 0; p < instance_.people.size(); ++p) {
    const auto& person = instance_.people[p];
    if (!person.prepare && !person.mix && !person.apply) continue;
    ++hands;
    hands_free += layout.free_from(static_cast<int>(p));
    if (!person.apply) continue;
    ++appliers;
    applier_free += layout.free_from(static_cast<int>(p));
  }
  const auto shared = [](int ticks, int by) { return by > 0 ? (ticks + by - 1) / by : kNever; };
  int least = std::max(layout.furthest(), shared(hands_free + applying + mixing + instance_.prepare, hands));
  if (applying > 0 && appliers == 1) first = std::max(first, applier_free + applying);
  if (applying > 0) least = std::max(least, shared(applier_free + applying, appliers));
  return std::max(least, first + std::max(instance_.prepare, opening));
}

bool Search::dominated(const Layout& layout) {
  layout.signature(signature_);
  auto& states = seen_[layout.key()];
  const auto no_larger = [](const std::vector<int>& a, const std::vector<int>& b) {
    for (std::size_t i = 0; i < a.size(); ++i)
      if (a[i] > b[i]) return false;
    return true;
  };
  for (const auto& state : states)
    if (no_larger(state, signature_)) return true;
  if (!layout.loose(limit())) return false;
  std::erase_if(states, [&](const auto& state) { return no_larger(signature_, state); });
  states.push_back(signature_);
  return false;
}

void Search::finish(const Layout& layout) {
  for (std::size_t p = 0; p < instance_.people.size(); ++p) {
    if (!instance_.people[p].prepare) continue;
    Layout whole = layout;
    if (!whole.prepare(static_cast<int>(p), limit())) continue;
    const auto cost = cost_of(whole.furthest(), whole);
    if (cost >= best_cost_) continue;
    best_cost_ = cost;
    best_ = std::move(whole);
  }
}

// In a hard order nothing is laid before all that the house starts later; of twins the last in the list goes
// first.
bool Search::eligible(const Layout& layout, int app) const {
  const auto& a = instance_.apps[app];
  if (layout.placed(app)) return false;
  if (a.twin >= 0 && !layout.placed(a.twin)) return false;
  return instance_.soft || (a.later & ~layout.mask()) == 0;
}

// Packets that can change places leave in the order of their application; those that stay to the basin are
// the last.
bool Search::may_leave(const Layout& layout, int app) const {
  const auto& a = instance_.apps[app];
  if (!a.packet || layout.placed(app) || layout.removed(app)) return false;
  if (a.twin >= 0 && !layout.removed(a.twin) && !layout.placed(a.twin)) return false;
  return (a.queue & ~(layout.mask() | layout.removals())) == 0;
}

bool Search::may_stay(const Layout& layout, int app) const {
  return layout.removed(app) || (instance_.apps[app].queue & layout.removals()) == 0;
}

// Another pair of hands before `person` that can do the same at the same time.
bool Search::twin_hands(const Layout& layout, int person) const {
  const bool loose = layout.loose(limit());
  const auto& mine = instance_.people[person];
  for (int p = 0; p < person; ++p) {
    const auto& other = instance_.people[p];
    const bool alike = other.prepare == mine.prepare && other.mix == mine.mix && other.apply == mine.apply &&
                       other.remove == mine.remove && other.from == mine.from && other.until == mine.until &&
                       layout.free_from(p) == layout.free_from(person) &&
                       (layout.jobs_of(p) + layout.jobs_of(person) == 0 || loose);
    const bool same_pace =
        std::ranges::all_of(instance_.apps, [&](const auto& a) { return a.apply[p] == a.apply[person]; });
    if (alike && same_pace) return true;
  }
  return false;
}

void Search::add(std::vector<Child>& children, Layout&& layout, bool laid) {
  if (!laid) return;
  const int least = bound(layout);
  if (least > limit() || cost_of(least, layout) >= best_cost_) return;
  if (dominated(layout)) return;
  children.push_back({std::move(layout), least});
}

void Search::add_applications(std::vector<Child>& children, const Layout& layout) {
  for (int i = 0; i < static_cast<int>(instance_.apps.size()); ++i) {
    const auto& app = instance_.apps[i];
    for (int p = 0; p < static_cast<int>(instance_.people.size()); ++p) {
      if (twin_hands(layout, p)) continue;
      if (eligible(layout, i) && may_stay(layout, i) && app.apply[p] != kNever) {
        Layout next = layout;
        const bool laid = next.apply(i, p, limit());
        add(children, std::move(next), laid);
      }
      if (may_leave(layout, i) && instance_.people[p].remove) {
        Layout next = layout;
        const bool laid = next.remove(i, p, limit());
        add(children, std::move(next), laid);
      }
    }
  }
}

void Search::descend(const Layout& layout) {
  if (best_cost_ <= goal_ || stopped_) return;
  if (++nodes_ > budget_) {
    stopped_ = true;
    return;
  }
  std::vector<Child> children;
  bool open = false;
  for (int b = 0; b < static_cast<int>(instance_.bowls.size()); ++b) {
    if (layout.open_batch(b) < 0) continue;
    open = true;
    for (int p = 0; p < static_cast<int>(instance_.people.size()); ++p) {
      if (!instance_.people[p].mix || twin_hands(layout, p)) continue;
      Layout next = layout;
      const bool laid = next.mix(b, p, limit());
      add(children, std::move(next), laid);
    }
  }
  add_applications(children, layout);
  const bool all = layout.mask() == (1u << instance_.apps.size()) - 1;
  if (all && !open) finish(layout);
  std::ranges::stable_sort(children, {}, &Child::bound);
  for (const auto& child : children)
    if (child.bound <= limit() && cost_of(child.bound, child.layout) < best_cost_) descend(child.layout);
}

constexpr int kSeedShare = 10;  // of the node limit, for each plan in a fixed sequence

// A first plan from a fixed sequence lets the search drop states from the start.
void seed_from_sequences(const Instance& instance, Search& search) {
  for (const bool lightening_first : {true, false}) {
    const auto sequence = in_sequence(instance, lightening_first);
    Search first(sequence, kNever, instance.node_limit / kSeedShare);
    first.run();
    if (first.best()) search.seed(first.best()->jobs());
    if (first.best() || !first.stopped()) continue;
    for (int p = 0; p < static_cast<int>(instance.people.size()); ++p) {
      if (!instance.people[p].apply) continue;
      const auto single = in_sequence(applied_by(instance, p), lightening_first);
      Search alone(single, kNever, instance.node_limit / kSeedShare);
      alone.run();
      if (alone.best()) search.seed(alone.best()->jobs());
    }
  }
}

// A plan with everybody there keeps to the hours of the people.
bool within_hours(const Instance& instance, const Layout& layout, int basin) {
  return std::ranges::all_of(layout.jobs(), [&](const Job& job) {
    const auto& person = instance.people[job.person];
    return basin - job.start() >= person.from && basin - job.end <= person.until;
  });
}

}  // namespace

SearchReport search(const Instance& instance) {
  SearchReport report;
  Search free(instance, kNever, instance.node_limit);
  seed_from_sequences(instance, free);
  free.run();
  report.nodes = free.nodes();
  report.proven = !free.stopped();
  if (!free.best()) return report;

  // Hours of people and of the basin: try basin times from the shortest plan on.
  int last_arrival = 0, last_leaving = 0;
  for (const auto& person : instance.people) {
    last_arrival = std::max(last_arrival, person.from);
    if (person.until != kNever) last_leaving = std::max(last_leaving, person.until);
  }
  const int shortest = free.best()->furthest();
  int longest_stay = 0;
  for (const auto& app : instance.apps) longest_stay = std::max(longest_stay, app.max);
  // Later than this nobody new arrives, and whoever leaves is missed by every plan alike.
  const int last = std::max(shortest + last_arrival, last_leaving + longest_stay + last_arrival);
  Cost best;
  for (int basin = next_basin_time(instance, shortest); basin != kNever;
       basin = next_basin_time(instance, basin + 1)) {
    if (basin >= best.ticks) break;
    if (within_hours(instance, *free.best(), basin)) {
      const Cost cost{basin + free.best()->inversions() * instance.soft_cost, free.best()->extras()};
      if (cost < best) best = cost, report.best = Found{*free.best(), basin};
      break;
    }
    Search fixed(instance, basin, instance.node_limit - report.nodes);
    fixed.run();
    report.nodes += fixed.nodes();
    report.proven = report.proven && !fixed.stopped();
    if (fixed.best() && fixed.cost() < best) best = fixed.cost(), report.best = Found{*fixed.best(), basin};
    if (basin > last || report.nodes >= instance.node_limit) break;
  }
  return report;
}

}  // namespace strandline
