// A photo of a printed card as a door asks for it.
#pragma once

#include "strandline/card.h"
#include "strandline/wire/json.h"

namespace strandline::wire {

struct CardPhoto {
  card::Measured measured{};                   // where the card was measured
  std::optional<card::Neighbours> neighbours;  // where it was not: a comparison, nothing in numbers
  bool by_spectra = false;                     // the card's file had its spectra
};

// `photo`: bytes of a picture; `card`: text of an instrument's file of the card's patches, empty = it was not measured.
// Problems: those of picture.h, card.h and measured.h.
Result<CardPhoto> read_card_photo(std::string_view photo, std::string_view card);
Json answer_json(const CardPhoto& photo);

// {"photo" base64, "card"?} → {"lab", "error", "level", "tone", "srgb", "nearest", "to_nearest", "by_spectra"}, or for
// a card that nobody measured {"nearest", "next", "lighter"}. Problems besides: missing_key · wrong_type.
Result<Json> answer_card_photo(const Json& asked);

}  // namespace strandline::wire
