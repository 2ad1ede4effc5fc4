#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "measure/card_marks.h"
#include "measure/decoded.h"

namespace strandline::card {
namespace {

using Points = std::array<std::array<double, 2>, 4>;

tl::unexpected<Problems> refuse(const char* code, std::map<std::string, std::string> params = {}) {
  return tl::unexpected(Problems{{code, "", std::move(params)}});
}

// From millimetres of the card to pixels: the plane map of four points.
class Map {
 public:
  explicit Map(const Points& pixels) {
    Eigen::Matrix<double, 8, 8> a;
    Eigen::Matrix<double, 8, 1> b;
    const auto card = marks();
    for (int i = 0; i < 4; ++i) {
      const auto& [x, y] = card[static_cast<size_t>(i)];
      const auto& [u, v] = pixels[static_cast<size_t>(i)];
      a.row(2 * i) << x, y, 1, 0, 0, 0, -u * x, -u * y;
      a.row(2 * i + 1) << 0, 0, 0, x, y, 1, -v * x, -v * y;
      b[2 * i] = u, b[2 * i + 1] = v;
    }
    h_ = a.fullPivLu().solve(b);
  }
  std::array<double, 2> operator()(double x, double y) const {
    const double w = h_[6] * x + h_[7] * y + 1;
    return {(h_[0] * x + h_[1] * y + h_[2]) / w, (h_[3] * x + h_[4] * y + h_[5]) / w};
  }

 private:
  Eigen::Matrix<double, 8, 1> h_;
};

// The mean light of the inner part of a box, sampled on a grid, as a code again; nothing where it leaves the picture.
std::optional<Code> mean(const Picture& p, const Map& map, const Box& box, int grid) {
  constexpr double kInner = 0.6;
  std::array<double, 3> sum{};
  for (int j = 0; j < grid; ++j)
    for (int i = 0; i < grid; ++i) {
      const double fx = 0.5 + kInner * ((i + 0.5) / grid - 0.5), fy = 0.5 + kInner * ((j + 0.5) / grid - 0.5);
      const auto [u, v] = map(box.x_mm + fx * box.width_mm, box.y_mm + fy * box.height_mm);
      if (!(u >= 0 && v >= 0 && u < p.width && v < p.height)) return std::nullopt;
      const size_t at = 3 * (static_cast<size_t>(v) * static_cast<size_t>(p.width) + static_cast<size_t>(u));
      for (size_t k = 0; k < 3; ++k) sum[k] += decoded(p.rgb[at + k]);
    }
  Code out{};
  for (size_t k = 0; k < 3; ++k) out[k] = encoded(sum[k] / (grid * grid));
  return out;
}

std::optional<Codes> codes_at(const Picture& p, const Map& map, int grid) {
  Codes out;
  for (const Patch& patch : patches()) {
    const auto code = mean(p, map, {patch.x_mm, patch.y_mm, patch_mm, patch_mm}, grid);
    if (!code) return std::nullopt;
    out.patches.push_back(*code);
  }
  const auto strand = mean(p, map, window(), 3 * grid);
  if (!strand) return std::nullopt;
  out.strand = *strand;
  return out;
}

// How well the patches follow what was asked of the printer: correlation over all patches and channels.
double likeness(const Codes& codes) {
  double n = 0, x1 = 0, y1 = 0, xx = 0, yy = 0, xy = 0;
  for (size_t i = 0; i < codes.patches.size(); ++i)
    for (size_t k = 0; k < 3; ++k) {
      const double x = patches()[i].print[k], y = codes.patches[i][k];
      n += 1, x1 += x, y1 += y, xx += x * x, yy += y * y, xy += x * y;
    }
  const double spread = (xx - x1 * x1 / n) * (yy - y1 * y1 / n);
  return spread > 0 ? (xy - x1 * y1 / n) / std::sqrt(spread) : 0;
}

// Clockwise as seen, as the marks are; nothing where they make no sensible quadrilateral.
std::optional<Points> round(const std::array<Mark, 4>& four) {
  std::array<Mark, 4> m = four;
  double cx = 0, cy = 0;
  for (const Mark& each : m) cx += each.x / 4, cy += each.y / 4;
  std::sort(m.begin(), m.end(), [&](const Mark& p, const Mark& q) {
    return std::atan2(p.y - cy, p.x - cx) < std::atan2(q.y - cy, q.x - cx);
  });
  constexpr double kMostUneven = 2.5;
  const auto [least, most] =
      std::minmax_element(m.begin(), m.end(), [](const Mark& p, const Mark& q) { return p.across < q.across; });
  if (most->across > kMostUneven * least->across) return std::nullopt;
  Points out{};
  for (size_t i = 0; i < 4; ++i) {
    const Mark &a = m[i], &b = m[(i + 1) % 4], &c = m[(i + 2) % 4];
    const double turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
    // Convex, and no three of them in line.
    if (turn < 0.2 * std::hypot(b.x - a.x, b.y - a.y) * std::hypot(c.x - b.x, c.y - b.y)) return std::nullopt;
    out[i] = {a.x, a.y};
  }
  return out;
}

}  // namespace

Result<Codes> find(const Picture& picture) {
  constexpr double kAlike = 0.85;  // by choice: the right way round is above 0.95, the wrong one about 0
  constexpr int kLook = 3, kMostAcross = 24, kLeastPixels = 12;
  if (picture.width < 1 || picture.height < 1 ||
      picture.rgb.size() != 3 * static_cast<size_t>(picture.width) * static_cast<size_t>(picture.height))
    return refuse("card_picture");
  const std::vector<Mark> marks = marks_in(picture);
  double best = kAlike;
  std::optional<Points> corners;
  const size_t n = marks.size();
  for (size_t a = 0; a < n; ++a)
    for (size_t b = a + 1; b < n; ++b)
      for (size_t c = b + 1; c < n; ++c)
        for (size_t d = c + 1; d < n; ++d) {
          const auto points = round({marks[a], marks[b], marks[c], marks[d]});
          if (!points) continue;
          for (size_t first = 0; first < 4; ++first) {
            Points turned = *points;
            std::rotate(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(first), turned.end());
            const auto codes = codes_at(picture, Map(turned), kLook);
            if (!codes) continue;
            if (const double alike = likeness(*codes); alike > best) best = alike, corners = turned;
          }
        }
  if (!corners) return refuse("card_not_found");
  const Map map(*corners);
  double least = 1e9;
  for (const Patch& p : patches()) {
    const auto a = map(p.x_mm, p.y_mm), b = map(p.x_mm + patch_mm, p.y_mm), c = map(p.x_mm, p.y_mm + patch_mm);
    least = std::min({least, std::hypot(b[0] - a[0], b[1] - a[1]), std::hypot(c[0] - a[0], c[1] - a[1])});
  }
  if (least < kLeastPixels) return refuse("card_small", {{"pixels", std::to_string(static_cast<int>(least))}});
  return *codes_at(picture, map, kMostAcross);
}

}  // namespace strandline::card
