// People and devices as the API tells them: never a secret.
#pragma once

#include "strandline/salon/people.h"
#include "strandline/wire/json.h"

namespace strandline::server {

inline wire::Json json_of(const salon::Person& p) {
  return {{"id", p.id}, {"name", p.name}, {"roles", salon::words_of(p.roles)}, {"here", p.here}, {"pin", p.has_pin}};
}

inline wire::Json json_of(const salon::Device& d) {
  return {{"id", d.id}, {"name", d.name}, {"paired_at", d.paired_at}};
}

}  // namespace strandline::server
