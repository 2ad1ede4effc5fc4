#include "evidence/card_trial.h"

#include <cmath>

#include "evidence/truth_light.h"

namespace strandline {
namespace {

const Weights& d65() { return weights(Light::daylight, Observer::cie_1964_10deg); }

// Natural hair of any depth, half of it under a dye that takes green.
Spectrum hair_of(truth::Random& random) {
  const truth::Light light(random);
  truth::Hair hair = light.natural(random.uniform(20, 62));
  if (random.uniform(0, 1) < 0.5)
    for (int b = 0; b < kBands; ++b) hair.dye[b] = 0.25 * std::exp(-std::pow((band_nm(b) - 510) / 45, 2) / 2);
  return light.reflectance(hair);
}

}  // namespace

CardTrial card_trial(std::uint64_t seed, int index, truth::Lamp lamp) {
  truth::Random random(seed, 100 * index + static_cast<int>(lamp));
  const truth::Printer printer(random);
  CardTrial out{.references = {}, .seen = {}, .sheet = {}, .camera = truth::Camera(random, lamp), .truth = {}};
  out.sheet.width_mm = card::width_mm, out.sheet.height_mm = card::height_mm;
  out.sheet.paper = printer.printed({1, 1, 1});
  out.sheet.table.fill(0.18);
  std::vector<truth::Spot> spots;
  constexpr double kHalf = card::patch_mm / 2,
                   kInstrument = 0.004;  // an instrument put down twice, share of what it says
  for (const card::Patch& p : card::patches()) {
    const Spectrum r = printer.printed(p.print);
    out.sheet.shapes.push_back({p.x_mm, p.y_mm, card::patch_mm, card::patch_mm, false, r});
    spots.push_back({(p.x_mm + kHalf) / card::width_mm, (p.y_mm + kHalf) / card::height_mm, r, 2000});
    measured::Sample s{p.id, 1, r, {}};
    const double off = random.normal(0, kInstrument), slope = random.normal(0, kInstrument);
    for (int b = 0; b < kBands; ++b) (*s.reflectance)[b] *= 1 + off + slope * (band_nm(b) - 550) / 150;
    s.lab = lab(*s.reflectance, d65());
    out.references.push_back(std::move(s));
  }
  const Spectrum black = printer.printed({0, 0, 0});
  for (const auto& [x, y] : card::marks())
    for (size_t ring = 3; ring-- > 0;)
      out.sheet.shapes.push_back({x, y, 2 * card::mark_mm[ring], 0, true, ring == 1 ? out.sheet.paper : black});
  const Spectrum hair = hair_of(random);
  const card::Box w = card::window();
  out.sheet.shapes.push_back({w.x_mm, w.y_mm, w.width_mm, w.height_mm, false, hair, 0.15});
  out.truth = lab(hair, d65());
  spots.push_back(
      {(w.x_mm + w.width_mm / 2) / card::width_mm, (w.y_mm + w.height_mm / 2) / card::height_mm, hair, 8000});
  const auto codes = out.camera.photo(spots, random);
  out.seen = {{codes.begin(), codes.end() - 1}, codes.back()};
  return out;
}

card::Picture picture_of(const CardTrial& trial, const truth::Pose& pose, int width, int height) {
  truth::Random random(static_cast<std::uint64_t>(width), height);
  truth::Pixels p = truth::picture(trial.sheet, trial.camera, pose, width, height, random);
  return {p.width, p.height, std::move(p.rgb)};
}

}  // namespace strandline
