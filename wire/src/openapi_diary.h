// The diary, and clients who are brought along, in the OpenAPI description.
#pragma once

#include "strandline/wire/json.h"

namespace strandline::wire {

// Adds their paths, and their schemas to `definitions`, where Booking is already.
void add_diary_paths(Json& paths, Json& definitions);

}  // namespace strandline::wire
