#pragma once

#include "strandline/store/store.h"

namespace strandline::store {

// What Store::open() does with a file; `fresh` makes it anew, whatever lies there.
Expected<std::unique_ptr<Store>> open_file(Options options, bool fresh);

// Where the master key of a file lies.
std::string key_path(const Options& options);

}  // namespace strandline::store
