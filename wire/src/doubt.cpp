#include "generated/constants.h"
#include "strandline/wire/head_fields.h"

namespace strandline::wire {

double doubt_of_level() { return Constants{}.reading_level_sd; }
double doubt_of_white_percent() { return Constants{}.reading_white_sd_percent; }
double doubt_of_porosity() { return Constants{}.reading_porosity_sd; }

}  // namespace strandline::wire
