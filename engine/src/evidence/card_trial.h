// A printed card, measured by an instrument, with hair in its window, under one lamp and seen by one camera.
#pragma once

#include "evidence/truth_photo.h"
#include "strandline/card.h"

namespace strandline {

struct CardTrial {
  std::vector<measured::Sample> references;  // with their spectra, as the instrument says
  card::Codes seen;                          // means of areas
  truth::Sheet sheet;                        // the card itself, hair in its window
  truth::Camera camera;
  Lab truth{};  // of the hair
};
CardTrial card_trial(std::uint64_t seed, int index, truth::Lamp lamp);

// Seen whole.
card::Picture picture_of(const CardTrial& trial, const truth::Pose& pose, int width, int height);

}  // namespace strandline
