// The door and the people of the salon in the OpenAPI description: written by the server, described here.
#pragma once

#include "strandline/wire/json.h"

namespace strandline::wire {

// Adds their paths, and their schemas to `definitions`.
void add_people_paths(Json& paths, Json& definitions);

}  // namespace strandline::wire
