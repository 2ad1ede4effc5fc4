#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "generated/learning.h"
#include "measure/card_fit.h"
#include "strandline/existing.h"
#include "strandline/illuminant.h"
#include "strandline/levels.h"
#include "strandline/optics.h"

namespace strandline::card {
namespace {

double at_band(const Power& p, int band) {
  return p[static_cast<size_t>(std::lround((band_nm(band) - power_nm(0)) / 5))];
}

// What cameras may make of a white under lamps that are about: published lights, usual sensitivities a little to and
// fro, each channel 1 on white.
std::vector<Channels> usual() {
  // nm: peaks and widths (one standard deviation) of red, green and blue, how far they shift; all priors.
  constexpr std::array<double, 3> kPeaks = {600, 538, 457}, kWidths = {37, 40, 31};
  constexpr double kShift = 7, kWider = 1.08;
  std::vector<Power> lamps = {power(Light::daylight), power(Light::lamp), power(Light::led), power(Light::fluorescent)};
  for (const double kelvin : {5000.0, 7500.0})
    if (const auto light = daylight(kelvin)) lamps.push_back(*light);
  std::vector<Channels> out;
  for (const Power& lamp : lamps)
    for (int way = 0; way < 7; ++way) {
      Channels c;
      for (int k = 0; k < 3; ++k) {
        const auto i = static_cast<size_t>(k);
        const double peak = kPeaks[i] + (way == 2 * k + 1 ? kShift : way == 2 * k + 2 ? -kShift : 0);
        const double width = kWidths[i] * (way == 0 ? kWider : 1);
        for (int b = 0; b < kBands; ++b)
          c(b, k) = at_band(lamp, b) * std::exp(-std::pow((band_nm(b) - peak) / width, 2) / 2);
        c.col(k) /= c.col(k).sum();
      }
      out.push_back(c);
    }
  return out;
}

// Hair of this colour: natural pigment, lightened a little, and what dye the rest asks for.
Spectrum hair_of(const Lab& colour) {
  const Constants constants;
  const Pigments pigment = pigments(constants);
  const Fibre natural = natural_fibre(level_of_lightness(colour.l), Tone::natural);
  return reflectance(optical_depth(
      dyed_to(lifted_to(natural, colour.l + learned::Priors{}.card_hair_under, constants), colour, pigment), pigment));
}

}  // namespace

Linear seen_by(const Channels& channels, const Spectrum& reflectance) {
  constexpr double kLeast = 1e-4;
  Linear out{};
  for (size_t k = 0; k < 3; ++k) {
    for (int b = 0; b < kBands; ++b) out[k] += channels(b, static_cast<Eigen::Index>(k)) * reflectance[b];
    out[k] = std::max(kLeast, out[k]);
  }
  return out;
}

Channels usual_channels() {
  const std::vector<Channels> all = usual();
  Channels mean = Channels::Zero();
  for (const Channels& c : all) mean += c / static_cast<double>(all.size());
  return mean;
}

Channels channels_of(const Even& even, std::span<const measured::Sample> references) {
  const learned::Priors p;
  static const std::vector<Channels> all = usual();
  const auto n = static_cast<Eigen::Index>(std::count(even.usable.begin(), even.usable.end(), true));
  Eigen::MatrixXd spectra(n, kBands);
  Eigen::MatrixXd seen(n, 3);
  Eigen::Index row = 0;
  for (size_t i = 0; i < even.patches.size(); ++i) {
    if (!even.usable[i]) continue;
    for (int b = 0; b < kBands; ++b) spectra(row, b) = (*references[i].reflectance)[b];
    for (int k = 0; k < 3; ++k) seen(row, k) = even.patches[i][static_cast<size_t>(k)];
    ++row;
  }
  const Channels mean = usual_channels();
  Channels out;
  for (int k = 0; k < 3; ++k) {
    Eigen::MatrixXd prior(kBands, kBands);
    for (int a = 0; a < kBands; ++a)
      for (int b = 0; b < kBands; ++b)
        prior(a, b) =
            std::pow(p.card_own / kBands, 2) * std::exp(-std::pow((band_nm(a) - band_nm(b)) / p.card_own_reach, 2) / 2);
    for (const Channels& c : all) {
      const Eigen::VectorXd off = c.col(k) - mean.col(k);
      prior += off * off.transpose() / static_cast<double>(all.size());
      // The maker's matrix takes from each channel some of the others.
      for (int other = 0; other < 3; ++other) {
        const Eigen::VectorXd mixed = p.card_mixed * (c.col(k) - c.col(other));
        prior += mixed * mixed.transpose() / static_cast<double>(all.size());
      }
    }
    const Eigen::MatrixXd across = prior * spectra.transpose();
    Eigen::MatrixXd spread = spectra * across;
    for (Eigen::Index i = 0; i < n; ++i) spread(i, i) += std::pow(p.card_patch_off * (seen(i, k) + 0.01), 2);
    const Eigen::VectorXd left = seen.col(k) - spectra * mean.col(k);
    out.col(k) = mean.col(k) + across * spread.ldlt().solve(left);
  }
  return out;
}

Lab as_hair(const Even& even, std::span<const measured::Sample> references, const Channels& channels,
            const Lab& inked) {
  constexpr double kDarkest = 8;  // L*
  const Spectrum r = hair_of(inked);
  const Lab is = lab(r, weights(Light::daylight, Observer::cie_1964_10deg));
  const Lab told = mapped(even, references, seen_by(channels, r));
  const double share = learned::Priors{}.card_hair_share;
  return {std::clamp(inked.l + share * (is.l - told.l), kDarkest, 100.0), inked.a + share * (is.a - told.a),
          inked.b + share * (is.b - told.b)};
}

}  // namespace strandline::card
