// A strand by a photo of the printed card, in simulated light (engine/include/strandline/card.h).
#include <algorithm>

#include "evidence/card_trial.h"
#include "evidence/rows.h"

namespace strandline {
namespace {

constexpr std::uint64_t kSeed = 20261130;

struct Trials {
  std::vector<double> off;
  int within = 0, refused = 0;
  double at(double share) {
    std::sort(off.begin(), off.end());
    return off[std::min(off.size() - 1, static_cast<size_t>(share * static_cast<double>(off.size())))];
  }
  void add(const Result<card::Measured>& got, const Lab& truth) {
    if (!got) return void(++refused);
    off.push_back(delta_e_2000(got->lab, truth));
    within += off.back() <= got->error;
  }
};

Trials by_areas(bool spectra) {
  constexpr int kEach = 60;
  Trials out;
  for (int lamp = 0; lamp < truth::kLamps; ++lamp)
    for (int i = 0; i < kEach; ++i) {
      CardTrial trial = card_trial(kSeed, i, static_cast<truth::Lamp>(lamp));
      if (!spectra)
        for (measured::Sample& s : trial.references) s.reflectance.reset();
      out.add(card::measure(trial.seen, trial.references), trial.truth);
    }
  return out;
}

// Turned and tilted, whole pictures.
Trials by_pictures() {
  constexpr int kEach = 4;
  Trials out;
  for (int lamp = 0; lamp < truth::kLamps; ++lamp)
    for (int i = 0; i < kEach; ++i) {
      const CardTrial trial = card_trial(kSeed, 1000 + i, static_cast<truth::Lamp>(lamp));
      truth::Random random(kSeed, 7000 + 10 * i + lamp);
      const truth::Pose pose{.turn_degrees = random.uniform(-180, 180),
                             .tilt_x = random.uniform(-22, 22),
                             .tilt_y = random.uniform(-22, 22),
                             .fills = random.uniform(0.7, 0.9)};
      const auto seen = card::find(picture_of(trial, pose, 1200, 900));
      out.add(seen.and_then([&](const card::Codes& c) { return card::measure(c, trial.references); }), trial.truth);
    }
  return out;
}

}  // namespace

void card_rows(Rows& rows) {
  const Basis source = simulated(
      "seed 20261130, unused before; printers, five kinds of lamp, cameras, light that falls off, noise, hair of "
      "equations of "
      "their own");
  Trials spectra = by_areas(true), colours = by_areas(false), pictures = by_pictures();
  rows.within("card.measured_spectra.median_de00", 0, 1.5, spectra.at(0.5), source);
  rows.within("card.measured_spectra.ninth_tenth_de00", 0, 4, spectra.at(0.9), source);
  rows.within("card.measured_spectra.within_stated", 0.85, 1, spectra.within / static_cast<double>(spectra.off.size()),
              source);
  rows.within("card.measured_lab.median_de00", 0, 1.5, colours.at(0.5), source);
  rows.within("card.measured_lab.within_stated", 0.85, 1, colours.within / static_cast<double>(colours.off.size()),
              source);
  rows.within("card.pictures.median_de00", 0, 1.5, pictures.at(0.5), source);
  rows.within("card.pictures.refused_of_20", 0, 4, pictures.refused, source);
}

}  // namespace strandline
