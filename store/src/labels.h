// Names of the visits that are worked on, in memory only: what lists and searches read.
#pragma once

#include <functional>
#include <map>
#include <mutex>

#include "strandline/store/store.h"

namespace strandline::store {

class Labels {
 public:
  // `load` reads all of them, when they are not known.
  Expected<std::vector<VisitRow>> list(const VisitsAsked& asked,
                                       const std::function<Expected<std::vector<VisitRow>>()>& load);
  // After a visit was saved; not while anything is held that `load` needs.
  void put(const VisitRow& row);
  // Something else was written, or may have been: they are read again.
  void forget();

 private:
  struct Listed {
    VisitRow row;
    std::string plain;  // the name as it is looked for
  };
  void add(VisitRow row);

  std::mutex mutex_;
  bool known_ = false;
  std::map<std::int64_t, Listed, std::greater<>> rows_;  // by store_seq, newest first
  std::map<std::string, std::int64_t> newest_;           // of each visit
};

}  // namespace strandline::store
