// A visit before whose bowls everything was asked and tested that rules ask for, with nothing found.
#pragma once

#include "strandline/visit.h"

namespace strandline::testing_support {

inline Answers nothing_to_tell() {
  Answers a;
  a.age = AgeBand::adult;
  a.reaction = ColourReaction::none;
  a.tattoo = TattooReaction::no_tattoo;
  a.lightener_reaction = a.related_allergy = a.asthma = a.face_rash = YesNo::no;
  a.medicine = Medicine::none;
  a.scalp = Scalp::calm;
  return a;
}

inline Visit cleared(Visit v) {
  v.date = "2026-03-09";
  v.skin_test = "2026-03-06";
  v.test = {v.shelf.ranges.front().maker, v.shelf.ranges.front().id, "2026-03-08", TestResult::clear, false};
  v.answers = nothing_to_tell();
  return v;
}

}  // namespace strandline::testing_support
