// How people come in: figures of knowledge/policy/doors.json, each with its source there, and common_passwords.json.
#pragma once

#include <set>
#include <string>

#include "strandline/result.h"
#include "strandline/store/secret.h"
#include "strandline/wire/json.h"

namespace strandline::salon {

// Passwords that many people have, by the first digits of token_digest() of store::plain().
struct CommonPasswords {
  std::set<std::string> digests;
  std::size_t longest = 0;  // bytes
  bool has(std::string_view plain) const;
};

struct DoorRules {
  int passphrase_signs = 0, pin_digits = 0;             // at least
  store::HashCost hash;                                 // of each secret
  int hashes_waiting = 0;                               // who may wait while another hash is worked out
  int tries_free = 0, wait_first_s = 0;                 // for one name: then waits, each twice the one before
  int wait_most_s = 0;                                  // s
  int address_tries_free = 0, address_wait_most_s = 0;  // the same for one address
  int tries_forgotten_h = 0;
  int idle_minutes = 0, session_hours = 0, device_days = 0, invite_minutes = 0;
  CommonPasswords common;
};

// Problems: missing_key {key}, out_of_range {value, min, max} with the key as path.
Result<DoorRules> read_door_rules(const wire::Json& json);
// Problems: missing_key {key}, wrong_type {expected}.
Result<CommonPasswords> read_common_passwords(const wire::Json& json);

}  // namespace strandline::salon
