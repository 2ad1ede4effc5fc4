// What may be a name, a passphrase, a PIN or a time zone.
#pragma once

#include <string>

#include "strandline/salon/door_rules.h"

namespace strandline::salon {

Result<void> check_name(const std::string& name);
// No rule of composition; but not the name, not what many people have, and not a few signs again and again.
Result<void> check_passphrase(const std::string& passphrase, const std::string& name, const DoorRules& rules);
Result<void> check_pin(const std::string& pin, const DoorRules& rules);
// Compared with the zones of this machine where it has a list of them.
Result<void> check_time_zone(const std::string& zone);

}  // namespace strandline::salon
