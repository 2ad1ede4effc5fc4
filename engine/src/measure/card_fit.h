// What the card says of the light and the camera, and a colour by it.
#pragma once

#include <Eigen/Core>
#include <span>
#include <vector>

#include "strandline/card.h"

namespace strandline::card {

using Linear = std::array<double, 3>;  // as a grey of this luminance (0…1) would be seen, channel by channel

// Patches and strand freed of how the light falls off and of the camera's tone curve.
struct Even {
  std::vector<Linear> patches;
  std::vector<bool> usable;  // no channel at its end
  Linear strand{};
};
// Problems: those of measure().
Result<Even> evened(const Codes& seen);
// The camera's tone curves through the greys: what each channel of a grey is seen as becomes `truly` (of every patch;
// only those of greys count).
Even straightened(Even even, const std::vector<Linear>& truly);
// Greys as they would be seen by an eye that takes them for greys: their luminances.
std::vector<Linear> luminances(std::span<const measured::Sample> references);

constexpr size_t nobody = static_cast<size_t>(-1);
// XYZ by least squares over the patches, those that look alike counting most; `left_out` not at all.
Lab mapped(const Even& even, std::span<const measured::Sample> references, const Linear& seen,
           size_t left_out = nobody);

// Lamp and camera together, band by band for each channel; 1 in all on white.
using Channels = Eigen::Matrix<double, kBands, 3>;
Linear seen_by(const Channels& channels, const Spectrum& reflectance);
// What is usual: the mean over lamps that are about.
Channels usual_channels();
// As usual, and such that the patches are seen as they are. Requires spectra of all references.
Channels channels_of(const Even& even, std::span<const measured::Sample> references);
// `inked` is the strand's colour if it were printed; what it is if it is hair.
Lab as_hair(const Even& even, std::span<const measured::Sample> references, const Channels& channels, const Lab& inked);

}  // namespace strandline::card
