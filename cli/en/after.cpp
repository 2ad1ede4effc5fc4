// What is told of the weeks after a visit.
#include <array>

#include "en/sentences.h"

namespace strandline::cli::en {
namespace {

constexpr std::array sentences{
    Sentence{"after_line_shows", "New growth shows a line after {from} to {until} weeks.", ""},
    Sentence{"after_short_hair_grows_out", "Hair this short has grown out after {from} to {until} weeks.", ""},
    Sentence{"after_fades_softly", "It fades softly within {from} to {until} weeks.", ""},
    Sentence{"after_blended_not_covered",
             "White is blended, not covered; it fades softly within {from} to {until} weeks.", ""},
    Sentence{"after_red_fades_first", "Red fades first: refresh it after {from} to {until} weeks.", ""},
    Sentence{"after_copper_fades", "Copper fades: a gloss after {from} to {until} weeks.", ""},
    Sentence{"after_toner_lasts", "A toner lasts {from} to {until} weeks, not for good.", ""},
    Sentence{"after_shadow_fades", "The shadow fades within {from} to {until} weeks, and turns warm.", ""},
    Sentence{"after_direct_fades", "Direct colour fades over eight to ten washes, {from} to {until} weeks.", ""},
    Sentence{"after_direct_stains", "It stains linen and skin, and is hard to take out again.", ""},
    Sentence{"after_ends_take_and_fade", "Porous ends take more at once and fade first.", ""},
    Sentence{"after_lighter_needs_more", "Going lighter again will need a remover or lights.", ""},
    Sentence{"after_growth_may_glow", "The new growth may look brighter than the lengths.", ""},
    Sentence{"after_warmth_shows", "Warmth will show where old colour comes out.", ""},
    Sentence{"after_darkens_back", "It may darken again within days.", ""},
    Sentence{"after_half_way_is_good", "Half way there is a good result today.", ""},
    Sentence{"after_warmth_stays", "Some warmth stays: colour alone lifts warm.", ""},
    Sentence{"after_curl_may_loosen", "The curl may loosen a little.", ""},
    Sentence{"after_no_more_home_colour", "No more home colour until this is done.", ""},
    Sentence{"after_metal_comes_back",
             "Metal in the water comes back: wet the hair first and wear a cap, and take it off with a chelating wash "
             "every week or two.",
             ""},
    Sentence{"after_violet_on_yellow_dulls", "Pure violet on yellow hair turns dull: red-violet, or lighter first.",
             ""},
    Sentence{"after_wash_and_wait",
             "Only a little too dark, and fresh: clarifying washes, and look again in one to two weeks.", ""},
    Sentence{"after_signs_wash_off",
             "Itch, redness or swelling at the test spot or anywhere: wash it off and get medical help. It may come "
             "days later.",
             ""},
};

}  // namespace

std::span<const Sentence> after_sentences() { return sentences; }

}  // namespace strandline::cli::en
