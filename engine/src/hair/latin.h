// A Latin hypercube of standard normal numbers: each column meets every 1/n slice of the distribution once.
#pragma once

#include <cstdint>
#include <vector>

namespace strandline {

// `count` numbers for dimension `dimension`, in an order that depends on nothing but the two.
std::vector<double> latin_column(int count, std::uint64_t dimension);

}  // namespace strandline
