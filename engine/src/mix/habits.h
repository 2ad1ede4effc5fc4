// What common practice knows of a zone and a setting before any optics: which strength the wish needs, what has no
// place there, what of a shade counts.
#pragma once

#include "mix/groups.h"
#include "mix/recipes.h"
#include "mix/settings.h"

namespace strandline {

// Share of white fibres, 0…1.
double white_share(const ZoneDraws& zone);

// Levels the wish is lighter than the pigmented fibres look; 0 where all are white.
double asked_lift(const Span& span, const Target& target);

// Bottle strength (% H2O2) that practice takes (knowledge/loss/developer_need.json): by the levels asked; white hair
// at least its own row; lightened or tinted hair the weakest, as what is on it does not lift.
double needed_developer_percent(const Span& span, double asked);

// % in the bottle that only deposits.
double deposit_percent();

// % in the bottle that this share of white asks for, 0 where there is too little to count.
double white_needs(double white);

// Levels per zone for what a setting is, whatever it mixes: the hair's exposure, strength beyond the need, and what it
// is too weak for white.
double setting_price(const Setting& setting, const SearchZone& zone, double exposure);
// A tint does not lift a tint: the wish is lighter than what was put on. A remover or a lightener comes first.
bool asks_colour_to_lift_colour(const SearchZone& zone);
// The wish is lighter than hair in its own colour by more than a class that only deposits could pretend.
bool asks_deposit_to_lift(const Setting& setting, const SearchZone& zone);
// As it is wished: hair in its own colour, its level and tone those of the wish, white too scattered to count.
bool fits(const Span& span, const Target& target);
// A bowl of this setting has no place there whatever it mixes: colour would have to lift colour, or a permanent tint
// would go on lightened hair that is not to be darker (it is toned by what does not lift; common practice).
bool out_of_place(const Setting& setting, const SearchZone& zone);
// Lightened hair is toned, not tinted, unless it is to go darker.
bool out_of_place_for_tint(const SearchZone& zone);
// A natural shade that answers for white; a shade whose level counts for how far apart the shades of a bowl lie.
bool counts_as_natural(const Product& product);
bool counts_for_levels(const Product& product);

}  // namespace strandline
