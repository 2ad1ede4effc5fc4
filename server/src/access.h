// Who may ask what: one row for each route of the API. What has no row here is refused, whoever asks.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "strandline/salon/roles.h"

namespace strandline::server {

struct Access {
  std::string_view method;
  std::string_view path;   // {id} stands for 1 to 80 letters, digits, - and _
  salon::Roles roles = 0;  // one of them is enough
  bool outside = false;    // also without being signed in
  bool unpaired = false;   // also from another machine that is not paired
  bool here_only = false;  // from another machine it is as if it were not there
};

std::span<const Access> access_table();

// The row of a request. `known` tells whether the path has rows for other methods.
struct Found {
  const Access* row = nullptr;
  bool known = false;
};
Found find_access(std::string_view method, std::string_view path);

}  // namespace strandline::server
