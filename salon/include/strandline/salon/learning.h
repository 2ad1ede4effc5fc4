// learn: what the results of this salon's visits teach, from the facts alone; made anew whenever one of them is taken
// out again and whenever somebody is erased.
#pragma once

#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <vector>

#include "strandline/learned.h"
#include "strandline/salon/shelves.h"

namespace strandline::salon {

// One zone of one result, beside what was expected of it then.
struct LearnedResult {
  learned::Said said;
  std::string result, visit, person, colourist, at;  // ids; when it was told
  bool without = false;                              // taken out by hand: it teaches nothing
};

struct Lesson {
  learned::Model model;
  std::vector<LearnedResult> results;                    // in the order in which they were told
  std::vector<std::pair<std::string, Problems>> unread;  // results that nothing can be learned from, and why
};

// Safe from many threads at once.
class Learning {
 public:
  // The shelves must outlive it.
  Learning(World world, const Shelves& shelves) : world_(std::move(world)), shelves_(shelves) {}

  // With every result told until now. Problems: those of the store.
  Result<std::shared_ptr<const Lesson>> now();
  // Takes a result out, or in again; kept as a fact. Everything is learned anew from the others. Problems:
  // result_not_found {id}, those of the store.
  Result<void> set_without(const std::string& result, bool without, const std::string& by = {});

 private:
  Result<void> read_choices();
  Result<void> read_results();
  void take(const store::Fact& result);
  Result<learned::Outcome> outcome(const store::Fact& result);

  World world_;
  const Shelves& shelves_;
  std::mutex lock_;
  std::int64_t read_ = 0, choices_ = 0;
  std::set<std::string> without_;
  std::set<std::string> drafts_;  // visits with a result that were not handed in yet
  std::shared_ptr<Lesson> lesson_ = std::make_shared<Lesson>();
};

}  // namespace strandline::salon
