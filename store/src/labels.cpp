#include "labels.h"

#include "strandline/store/plain.h"

namespace strandline::store {

Expected<std::vector<VisitRow>> Labels::list(const VisitsAsked& asked,
                                             const std::function<Expected<std::vector<VisitRow>>()>& load) {
  const std::lock_guard lock(mutex_);
  if (!known_) {
    auto loaded = load();
    if (!loaded) return tl::unexpected(loaded.error());
    rows_.clear(), newest_.clear();
    for (VisitRow& row : *loaded) add(std::move(row));
    known_ = true;
  }
  const std::string find = plain(asked.find), client = plain(asked.client);
  std::vector<VisitRow> out;
  for (auto at = rows_.upper_bound(asked.before); at != rows_.end() && std::ssize(out) < asked.limit; ++at) {
    const Listed& one = at->second;
    if (one.plain.find(find) == std::string::npos || (!client.empty() && one.plain != client)) continue;
    if (asked.person.empty() || one.row.person == asked.person) out.push_back(one.row);
  }
  return out;
}

void Labels::add(VisitRow row) {
  auto& newest = newest_[row.visit_id];
  if (row.store_seq < newest) return;
  rows_.erase(newest);
  newest = row.store_seq;
  std::string name = plain(row.client);
  rows_.insert_or_assign(newest, Listed{std::move(row), std::move(name)});
}

void Labels::put(const VisitRow& row) {
  const std::lock_guard lock(mutex_);
  if (known_) add(row);
}

void Labels::forget() {
  const std::lock_guard lock(mutex_);
  known_ = false;
  rows_.clear(), newest_.clear();
}

}  // namespace strandline::store
