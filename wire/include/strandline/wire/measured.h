// Measurement files and typed L*a*b* as a door asks for them.
#pragma once

#include "strandline/measured.h"
#include "strandline/wire/json.h"

namespace strandline::wire {

// {"text"} → {"samples": [{name, line, lab, level, tone, srgb, reflectance?}], "notes"}. Text of one line with three
// numbers is L*a*b* typed. Problems: those of measured.h · missing_key · wrong_type.
Result<Json> answer_measured(const Json& asked);
Json answer_json(const measured::File& file);

// Swatches of a range's shades into a shelf: {"document", "range", "text"} → {"document", "matched": [product],
// "unmatched": [sample], "next": [product], "notes"}. A sample is a shade by the code on its tube, its name or its id;
// what is L*a*b* alone becomes the plainest spectrum of that colour. `next`: whose swatches would say most of the
// others. Empty text changes nothing and answers `next`. Problems: those of measured.h · missing_key · wrong_type ·
// unknown_range {range}.
Result<Json> answer_swatches(const Json& asked);

}  // namespace strandline::wire
