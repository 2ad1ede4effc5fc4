// Converting declared percentages between the forms of one substance.
#pragma once

#include <string_view>

#include "generated/law_data.h"
#include "strandline/law.h"

namespace strandline::law {

inline constexpr std::string_view kAsListed = "as_listed";

// What is known of an amount: it lies in [low, high]; high may be infinite.
struct Bounds {
  double low = 0;
  double high = 0;
};

std::optional<double> reference_per_gram(int entry, std::string_view form);

// Whether any entry of knowledge/law uses this word for a form.
bool known_form(std::string_view form);

// The form a declaration is counted in: its basis, else what its CAS number names, else empty.
std::string_view form_of(const Declared& declared);

// Bounds, in the basis `as`, of what one gram of the product brings, in percent.
Bounds percent_as(int entry, std::string_view as, const Declared& declared);

}  // namespace strandline::law
