#include "schedule/branch.h"

#include <algorithm>

namespace strandline {

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

}  // namespace strandline
