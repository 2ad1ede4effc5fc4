// Steps that make the hair ready for its colour: where each has a place, and the grid of ways to do it.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "mix/groups.h"

namespace strandline {

enum class Opening { chelate, soften, fill, remove, lighten };
inline constexpr Opening kOpenings[] = {Opening::chelate, Opening::soften, Opening::fill, Opening::remove,
                                        Opening::lighten};
std::string_view code(Opening opening);  // "chelate" …

// One way to do it: a product of the shelf by one process.
struct FirstStep {
  const Range* range = nullptr;
  std::vector<const Product*> products;  // weighed in equal shares
  double developer_percent = 0;          // 0 = none
  double ratio = 0, minutes = 0;
};

// Common practice: minerals are taken off before any peroxide, resistant white is softened, lightened hair taken more
// than two levels down is filled, tinted hair that shall be lighter is freed of its colour, hair that shall be lighter
// than a tint lifts is lightened.
bool has_a_place(Opening opening, const SearchZone& zone);

// Done whatever it costs: minerals come off before any peroxide, and what is to go far darker gets its warm ground.
bool required(Opening opening);

// Every range of the shelf that can do it × strengths × times, gentlest first. Pointers into the shelf.
std::vector<FirstStep> ways(Opening opening, const Shelf& shelf, const FormulaPolicy& policy);

// Why this may not touch this span (a code of the house rules), or empty.
std::string forbidden(const FirstStep& step, const Span& span, const FormulaPolicy& policy);

Formula pour(const FirstStep& step, double grams, const Shelf& shelf, const FormulaPolicy& policy);

}  // namespace strandline
