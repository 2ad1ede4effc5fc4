#include "strandline/levels.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "generated/tables.h"
#include "strandline/fibre.h"
#include "strandline/optics.h"

namespace strandline {
namespace {

using tables::level_anchors;
using tables::tone_words;

constexpr size_t kAnchors = level_anchors.size();

const Weights& daylight() { return weights(Light::daylight, Observer::cie_1964_10deg); }

Lab colour(const Fibre& f) {
  static const Pigments nominal = pigments(Constants{});
  return lab(reflectance(optical_depth(f, nominal)), daylight());
}

Fibre melanin(double total, double pheomelanin_share) {
  Fibre f;
  f.eumelanin = total * (1 - pheomelanin_share);
  f.pheomelanin = total * pheomelanin_share;
  return f;
}

// Total melanin (% w/w) whose hair has this L*; 0 when even white hair is darker, 12 when the floor is lighter.
double total_for_lightness(double lightness, double pheomelanin_share) {
  double low = 0, high = 12;
  if (colour(melanin(low, pheomelanin_share)).l <= lightness) return low;
  if (colour(melanin(high, pheomelanin_share)).l >= lightness) return high;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (colour(melanin(middle, pheomelanin_share)).l > lightness ? low : high) = middle;
  }
  return (low + high) / 2;
}

double tone_scale(double lightness) {
  const Constants c;
  return std::clamp((lightness - c.tone_offset_floor) / (c.tone_offset_reference_lightness - c.tone_offset_floor), 0.15,
                    1.2);
}

}  // namespace

double lightness_of_level(double level) {
  size_t i = 1;
  while (i + 1 < kAnchors && level > level_anchors[i][0]) ++i;
  const auto &low = level_anchors[i - 1], &high = level_anchors[i];
  return low[1] + (level - low[0]) * (high[1] - low[1]) / (high[0] - low[0]);
}

double level_of_lightness(double lightness) {
  size_t i = 1;
  while (i + 1 < kAnchors && lightness > level_anchors[i][1]) ++i;
  const auto &low = level_anchors[i - 1], &high = level_anchors[i];
  return std::clamp(low[0] + (lightness - low[1]) * (high[0] - low[0]) / (high[1] - low[1]), 0.0, 12.0);
}

double levels_per_lightness(double level) {
  const double half = 0.5;
  return 2 * half / (lightness_of_level(level + half) - lightness_of_level(level - half));
}

Fibre white_fibre() { return Fibre{}; }

Fibre natural_fibre(double level, Tone tone) {
  const double share = tone_words[static_cast<size_t>(tone)][2];
  return melanin(total_for_lightness(lightness_of_level(level), share), share);
}

Fibre natural_fibre(const Lab& measured) {
  Fibre best;
  double best_distance = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= 20; ++i) {
    const Fibre f = melanin(total_for_lightness(measured.l, i / 20.0), i / 20.0);
    const Lab c = colour(f);
    const double distance = std::hypot(c.a - measured.a, c.b - measured.b);
    if (distance < best_distance) best = f, best_distance = distance;
  }
  return best;
}

Lab colour_of(double level, Tone tone) {
  Lab c = colour(natural_fibre(level, Tone::natural));
  const auto& word = tone_words[static_cast<size_t>(tone)];
  c.a += word[0] * tone_scale(c.l);
  c.b += word[1] * tone_scale(c.l);
  return c;
}

Lab colour_of(double level, Tone tone, Tone second) {
  const double share = Constants{}.second_tone_share;
  Lab c = colour_of(level, tone);
  const Lab other = colour_of(level, second);
  c.a += share * (other.a - c.a);
  c.b += share * (other.b - c.b);
  return c;
}

Named name_colour(const Lab& lab) {
  Named named;
  named.level = level_of_lightness(lab.l);
  double best = std::numeric_limits<double>::infinity();
  const Lab natural = colour_of(named.level, Tone::natural);
  for (int i = 0; i < kTones; ++i) {
    const auto& word = tone_words[i];
    const double scale = tone_scale(natural.l);
    const double distance = std::hypot(lab.a - natural.a - word[0] * scale, lab.b - natural.b - word[1] * scale);
    if (distance < best) best = distance, named.tone = static_cast<Tone>(i);
  }
  const Axis axis = warm_axis(natural);
  named.warmth = (lab.a - natural.a) * axis.a + (lab.b - natural.b) * axis.b;
  return named;
}

Axis warm_axis(const Lab& lab) {
  // Below this chroma the hue says little; the axis of mid-brown natural hair serves.
  constexpr double kChromaWithHue = 4;
  const double chroma = std::hypot(lab.a, lab.b);
  if (chroma >= kChromaWithHue && lab.b > 0) return {lab.a / chroma, lab.b / chroma};
  const Lab brown = colour_of(6, Tone::natural);
  const double c = std::hypot(brown.a, brown.b);
  return {brown.a / c, brown.b / c};
}

std::string_view word(Tone tone) {
  static constexpr std::string_view words[kTones] = {"natural", "ash",    "violet", "beige",
                                                     "gold",    "copper", "red",    "green"};
  return words[static_cast<int>(tone)];
}

bool parse_tone(std::string_view text, Tone& tone) {
  for (int i = 0; i < kTones; ++i)
    if (word(static_cast<Tone>(i)) == text) return tone = static_cast<Tone>(i), true;
  return false;
}

}  // namespace strandline
