#include <array>
#include <utility>

#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 53> labels{{
    {"says_stop", "closed"},
    {"says_ceiling", "limited"},
    {"says_restrict", "on a condition"},
    {"says_ask", "closed until answered"},
    {"high_lift", "high-lift"},
    {"demi_alkaline", "demi"},
    {"demi_acid", "acid demi"},
    {"lightener_on_scalp", "lightener on the scalp"},
    {"lightener_off_scalp", "lightener off the scalp"},
    {"pre_softening", "softener"},
    {"prepare", "prepare"},
    {"mix", "mix"},
    {"apply", "apply"},
    {"check", "look"},
    {"remove_packet", "take out packet"},
    {"emulsify", "emulsify"},
    {"rinse", "rinse"},
    {"shampoo", "shampoo"},
    {"tone", "tone"},
    {"treat", "treat"},
    {"dry", "dry"},
    {"photograph", "photograph"},
    {"within", "within every limit that was declared"},
    {"over", "OVER A LEGAL LIMIT"},
    {"unknown_percentage", "unknown: a percentage is not declared"},
    {"not_permitted_use", "NOT PERMITTED FOR THIS USE"},
    {"not_listed", "no entry known here"},
    {"exhausted", "each bounded or evaluated"},
    {"cancelled", "stopped early"},
    {"not_searched", "your own bowls, nothing compared"},
    {"gentler", "gentler"},
    {"simpler", "fewer tubes"},
    {"cheaper", "cheaper"},
    {"fewer_bowls", "one bowl fewer"},
    {"later_on_lengths", "the same mix, later on the lengths"},
    {"as_wished", "as wished, with a line where the lengths begin"},
    {"quicker", "off sooner"},
    {"lighter_first", "lighter today, deepened at the basin"},
    {"softer_line", "a softer regrowth line"},
    {"closer", "finer grams, beyond the mixes compared"},
    {"chelate", "take minerals off"},
    {"white_hair", "a swatch on white hair"},
    {"stated_hair", "a swatch on stated hair"},
    {"name", "its name alone"},
    {"soften", "soften"},
    {"fill", "fill"},
    {"remove", "take the old colour off"},
    {"lighten", "lighten"},
    {"several", "prepare each zone"},
    {"colour", "colour"},
    {"level", "level"},
    {"white", "white share"},
    {"porosity", "porosity"},
}};

}  // namespace

std::string_view label(std::string_view word) {
  for (const auto& [key, text] : labels) {
    if (key == word) return text;
  }
  return word;
}

}  // namespace strandline::cli::en
