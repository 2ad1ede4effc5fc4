#include <algorithm>
#include <cmath>
#include <cstdio>

#include "strandline/card.h"

namespace strandline::card {
namespace {

constexpr int kColumns = 9, kRows = 6;
constexpr double kStepX = 15.5, kStepY = 15.5, kLeft = 5.5, kTop = 6;

bool in_window(int row, int column) { return row >= 2 && row <= 3 && column >= 3 && column <= 5; }
bool in_corner(int row, int column) {
  return (row == 0 || row == kRows - 1) && (column == 0 || column == kColumns - 1);
}

// Whites where the light may fall off; greys in steps of one look; the rest browns, blonds, reds and ashes as hair has
// them, and a few cleaner hues.
struct Grey {
  int place;
  double print;
};
constexpr std::array<Grey, 14> kGreys = {{{1, 1},
                                          {7, 1},
                                          {13, 1},
                                          {40, 1},
                                          {46, 1},
                                          {52, 1},
                                          {9, 0.8},
                                          {17, 0.66},
                                          {36, 0.54},
                                          {44, 0.42},
                                          {20, 0.32},
                                          {24, 0.24},
                                          {29, 0.17},
                                          {33, 0.1}}};
constexpr std::array<std::array<double, 3>, 30> kColours = {
    {{0.93, 0.86, 0.70}, {0.87, 0.76, 0.55}, {0.80, 0.66, 0.44}, {0.72, 0.56, 0.36}, {0.63, 0.47, 0.30},
     {0.54, 0.39, 0.25}, {0.46, 0.33, 0.22}, {0.38, 0.27, 0.19}, {0.31, 0.23, 0.17}, {0.24, 0.18, 0.15},
     {0.19, 0.15, 0.13}, {0.14, 0.12, 0.11}, {0.75, 0.70, 0.60}, {0.62, 0.57, 0.50}, {0.48, 0.44, 0.39},
     {0.36, 0.33, 0.30}, {0.26, 0.24, 0.22}, {0.80, 0.55, 0.30}, {0.70, 0.42, 0.22}, {0.58, 0.32, 0.18},
     {0.46, 0.24, 0.15}, {0.34, 0.18, 0.13}, {0.62, 0.22, 0.15}, {0.48, 0.16, 0.13}, {0.35, 0.12, 0.11},
     {0.50, 0.20, 0.26}, {0.60, 0.50, 0.58}, {0.88, 0.72, 0.36}, {0.45, 0.47, 0.36}, {0.40, 0.46, 0.56}}};

std::vector<Patch> made() {
  std::vector<Patch> out;
  size_t colour = 0;
  for (int row = 0; row < kRows; ++row)
    for (int column = 0; column < kColumns; ++column) {
      if (in_window(row, column) || in_corner(row, column)) continue;
      Patch p;
      p.id = std::string(1, static_cast<char>('A' + row)) + std::to_string(column + 1);
      p.x_mm = kLeft + kStepX * column, p.y_mm = kTop + kStepY * row;
      const auto* grey =
          std::find_if(kGreys.begin(), kGreys.end(), [&](const Grey& g) { return g.place == row * kColumns + column; });
      p.grey = grey != kGreys.end();
      if (p.grey)
        p.print.fill(grey->print);
      else
        p.print = kColours.at(colour++);
      out.push_back(std::move(p));
    }
  return out;
}

template <class... Values>
std::string text(const char* format, Values... values) {
  char out[300];
  std::snprintf(out, sizeof out, format, values...);
  return std::string(out) + '\n';
}

unsigned byte(double code) { return static_cast<unsigned>(std::lround(255 * std::clamp(code, 0.0, 1.0))); }

}  // namespace

const std::vector<Patch>& patches() {
  static const std::vector<Patch> all = made();
  return all;
}

Box window() { return {kLeft + 3 * kStepX, kTop + 2 * kStepY, 2 * kStepX + patch_mm, kStepY + patch_mm}; }

std::array<std::array<double, 2>, 4> marks() {
  const double left = kLeft + patch_mm / 2, right = left + kStepX * (kColumns - 1);
  const double top = kTop + patch_mm / 2, bottom = top + kStepY * (kRows - 1);
  return {{{left, top}, {right, top}, {right, bottom}, {left, bottom}}};
}

std::string svg() {
  std::string out = text(R"(<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %g %g">)",
                         width_mm, height_mm, width_mm, height_mm);
  out += text(R"(<rect width="%g" height="%g" fill="#ffffff"/>)", width_mm, height_mm);
  for (const Patch& p : patches())
    out += text(R"(<rect x="%.2f" y="%.2f" width="%g" height="%g" fill="#%02x%02x%02x"/>)", p.x_mm, p.y_mm, patch_mm,
                patch_mm, byte(p.print[0]), byte(p.print[1]), byte(p.print[2]));
  for (const auto& [x, y] : marks())
    for (int ring = 2; ring >= 0; --ring)
      out += text(R"(<circle cx="%.2f" cy="%.2f" r="%g" fill="%s"/>)", x, y, mark_mm[static_cast<size_t>(ring)],
                  ring == 1 ? "#ffffff" : "#000000");
  const Box w = window();
  out += text(
      R"(<rect x="%.2f" y="%.2f" width="%g" height="%g" fill="none" stroke="#000000" stroke-width="0.3" stroke-dasharray="2 1.5"/>)",
      w.x_mm, w.y_mm, w.width_mm, w.height_mm);
  return out + "</svg>\n";
}

Result<std::vector<measured::Sample>> references(const measured::File& file) {
  std::vector<measured::Sample> out;
  std::string missing;
  int count = 0;
  for (const Patch& p : patches()) {
    const auto found =
        std::find_if(file.samples.begin(), file.samples.end(), [&](const auto& s) { return s.name == p.id; });
    if (found != file.samples.end()) {
      out.push_back(*found);
      continue;
    }
    if (++count <= 5) missing += (missing.empty() ? "" : ", ") + p.id;
  }
  if (count > 0)
    return tl::unexpected(Problems{{"card_patches_missing", "", {{"ids", missing}, {"count", std::to_string(count)}}}});
  return out;
}

}  // namespace strandline::card
