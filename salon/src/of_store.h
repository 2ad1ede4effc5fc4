// Troubles of the store as problems of the use cases; ids that devices give.
#pragma once

#include "strandline/salon/world.h"

namespace strandline::salon {

// store_conflict is visit_changed_elsewhere {seq}, store_id_taken is entry_id_taken {id}; the rest keep their code and
// {detail}.
tl::unexpected<Problems> problem_of(const store::Trouble& trouble);
// The id given, or a new one. Problem not_an_id {id}.
Result<std::string> id_for(World& world, const std::string& given);
// A place in a list of facts or saves as the page before told it; "" = its beginning. Problem bad_request {what}.
Result<std::int64_t> place_of(const std::string& cursor, std::int64_t beginning);

}  // namespace strandline::salon
