// The house's rules of price: facts of the salon, the newest holds. What a visit costs by them.
#pragma once

#include <optional>

#include "strandline/salon/world.h"
#include "strandline/wire/stock_report.h"

namespace strandline::salon {

// By time, by result or by class; from `correction_levels` on by time at least; what was paid for the products on top.
// Nothing is rounded below what it comes to.
wire::Price price_of(const wire::PriceRules& rules, const wire::PriceAsked& asked);

// The rules of this salon; nothing where the house has set none. Problems of the store.
Result<std::optional<wire::PriceRules>> prices(World& world);
// Problems: those of decode · no_price (nothing in them costs anything).
Result<wire::PriceRules> set_prices(World& world, const wire::Json& asked, const std::string& by = {});

}  // namespace strandline::salon
