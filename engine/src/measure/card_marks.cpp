#include "measure/card_marks.h"

#include <algorithm>
#include <cmath>

namespace strandline::card {
namespace {

constexpr double kOuter = mark_mm[2] - mark_mm[1], kRing = mark_mm[1] - mark_mm[0], kDot = 2 * mark_mm[0];
constexpr std::array<double, 5> kRuns = {kOuter, kRing, kDot, kRing, kOuter};
constexpr double kAcross = 2 * mark_mm[2];
constexpr int kLeastAcross = 12;  // pixels; below it a ring is two pixels wide
constexpr size_t kMost = 12;

// Dark against its surroundings, a tenth of the picture wide.
class Darkness {
 public:
  explicit Darkness(const Picture& p) : width_(p.width), height_(p.height) {
    const auto w = static_cast<size_t>(width_), h = static_cast<size_t>(height_);
    std::vector<std::uint32_t> sums((w + 1) * (h + 1));
    std::vector<std::uint8_t> grey(w * h);
    for (size_t y = 0; y < h; ++y) {
      std::uint32_t row = 0;
      for (size_t x = 0; x < w; ++x) {
        const std::uint8_t* c = &p.rgb[3 * (y * w + x)];
        grey[y * w + x] = static_cast<std::uint8_t>((c[0] + 2 * c[1] + c[2]) / 4);
        row += grey[y * w + x];
        sums[(y + 1) * (w + 1) + x + 1] = sums[y * (w + 1) + x + 1] + row;
      }
    }
    const int half = std::max(15, std::max(width_, height_) / 20);
    dark_.resize(w * h);
    for (int y = 0; y < height_; ++y)
      for (int x = 0; x < width_; ++x) {
        const auto x0 = static_cast<size_t>(std::max(0, x - half)),
                   x1 = static_cast<size_t>(std::min(width_, x + half));
        const auto y0 = static_cast<size_t>(std::max(0, y - half)),
                   y1 = static_cast<size_t>(std::min(height_, y + half));
        const std::uint32_t sum =
            sums[y1 * (w + 1) + x1] - sums[y0 * (w + 1) + x1] - sums[y1 * (w + 1) + x0] + sums[y0 * (w + 1) + x0];
        const double mean = sum / static_cast<double>((x1 - x0) * (y1 - y0));
        dark_[at(x, y)] = grey[at(x, y)] < 0.75 * mean;
      }
  }
  bool operator()(int x, int y) const { return dark_[at(x, y)] != 0; }
  int width() const { return width_; }
  int height() const { return height_; }

 private:
  size_t at(int x, int y) const {
    return static_cast<size_t>(y) * static_cast<size_t>(width_) + static_cast<size_t>(x);
  }
  int width_, height_;
  std::vector<std::uint8_t> dark_;
};

bool as_a_mark(const std::array<int, 5>& runs) {
  constexpr double kOff = 0.45, kPixel = 1;
  const double sum = runs[0] + runs[1] + runs[2] + runs[3] + runs[4];
  if (sum < kLeastAcross) return false;
  for (size_t i = 0; i < 5; ++i) {
    const double wanted = kRuns[i] * sum / kAcross;
    if (std::abs(runs[i] - wanted) > kOff * wanted + kPixel) return false;
  }
  return true;
}

// The mark's extent along one line through (x, y), which is in its dot: its middle, where the line cuts it so.
std::optional<std::array<double, 2>> along(const Darkness& dark, int x, int y, int dx, int dy, int most) {
  std::array<int, 5> runs{};
  const auto inside = [&](int k) {
    const int px = x + k * dx, py = y + k * dy;
    return px >= 0 && py >= 0 && px < dark.width() && py < dark.height();
  };
  const auto count = [&](int from, int step, bool colour, int& run) {
    int k = from;
    while (inside(k) && std::abs(k) <= most && dark(x + k * dx, y + k * dy) == colour) ++run, k += step;
    return k;
  };
  int up = count(0, 1, true, runs[2]), down = count(-1, -1, true, runs[2]);
  up = count(up, 1, false, runs[3]), down = count(down, -1, false, runs[1]);
  up = count(up, 1, true, runs[4]), down = count(down, -1, true, runs[0]);
  if (!as_a_mark(runs)) return std::nullopt;
  const double dot_end = up - runs[4] - runs[3], middle = dot_end - runs[2] / 2.0;
  return std::array<double, 2>{middle, static_cast<double>(up - down - 1)};
}

void keep(std::vector<Mark>& marks, double x, double y, double across) {
  for (Mark& m : marks)
    if (std::hypot(m.x - x, m.y - y) < m.across / 3) {
      const double n = m.seen++;
      m.x = (m.x * n + x) / (n + 1), m.y = (m.y * n + y) / (n + 1), m.across = (m.across * n + across) / (n + 1);
      return;
    }
  constexpr size_t kMostLookedAt = 500;
  if (marks.size() < kMostLookedAt) marks.push_back({x, y, across, 1});
}

}  // namespace

std::vector<Mark> marks_in(const Picture& picture) {
  const Darkness dark(picture);
  std::vector<Mark> marks;
  const int most = std::max(dark.width(), dark.height()) / 4;
  for (int y = 0; y < dark.height(); ++y) {
    // The last five runs, dark first.
    std::array<int, 5> runs{};
    int start = 0;
    for (int x = 1; x <= dark.width(); ++x) {
      if (x < dark.width() && dark(x, y) == dark(x - 1, y)) continue;
      std::rotate(runs.begin(), runs.begin() + 1, runs.end());
      runs[4] = x - start;
      start = x;
      if (!dark(x - 1, y) || !as_a_mark(runs)) continue;
      const int middle = x - runs[4] - runs[3] - (runs[2] + 1) / 2;
      const auto down = along(dark, middle, y, 0, 1, most);
      if (!down) continue;
      const int cy = y + static_cast<int>(std::floor((*down)[0]));
      const auto across = along(dark, middle, cy, 1, 0, most);
      if (across) keep(marks, middle + (*across)[0], y + (*down)[0], ((*across)[1] + (*down)[1]) / 2);
    }
  }
  std::erase_if(marks, [](const Mark& m) { return m.seen < 2; });
  std::stable_sort(marks.begin(), marks.end(), [](const Mark& p, const Mark& q) { return p.seen > q.seen; });
  if (marks.size() > kMost) marks.resize(kMost);
  return marks;
}

}  // namespace strandline::card
