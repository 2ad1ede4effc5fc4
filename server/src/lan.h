// The door for other machines.
#pragma once

#include "tls/leaf.h"

namespace strandline::server {

// As it stands in an address: an IPv6 address in brackets.
std::string host_of(const std::string& name);

}  // namespace strandline::server
