// What results taught, and measurements, in the OpenAPI description.
#pragma once

#include "strandline/wire/json.h"

namespace strandline::wire {

// Adds their paths, their schemas to `definitions`, and "learned" to answers that hold bowls.
void add_learned_paths(Json& paths, Json& definitions);

}  // namespace strandline::wire
