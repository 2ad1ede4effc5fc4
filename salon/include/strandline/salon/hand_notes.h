// Notes for the hands: how the house does a technique, and how one colourist does, written once and shown on the clock
// whenever it is due. Each change is a fact; the newest of a technique and writer holds.
#pragma once

#include <string>
#include <vector>

#include "strandline/salon/world.h"

namespace strandline::salon {

struct HandNote {
  std::string technique;  // "lighten-packets": a word of the screens, letters, digits and "-"
  std::string person;     // whose own it is; "" = the house's
  std::string text, written_at;
};

inline constexpr std::size_t kHandNoteLongest = 600;  // bytes

// Those that are not empty, by technique, the house's first: the house's and those of `person`.
Result<std::vector<HandNote>> hand_notes(World& world, const std::string& person);
// An empty text takes it away. Problems not_an_id {id} for the technique, too_long {max}, those of the store.
Result<void> write_hand_note(World& world, const HandNote& note);

}  // namespace strandline::salon
