#pragma once

#include "strandline/wire/json.h"

namespace strandline::wire {

// OpenAPI 3.1 of the HTTP door; the types are those of the codec. The web app's types are generated from it.
Json openapi(const std::string& version);

}  // namespace strandline::wire
