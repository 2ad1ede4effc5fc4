// The stock of the shelves in the OpenAPI description.
#pragma once

#include "strandline/wire/schema.h"

namespace strandline::wire {

// Adds their paths, and their schemas to the definitions of `p`.
void add_stock_paths(SchemaPrinter& p, Json& paths);

}  // namespace strandline::wire
