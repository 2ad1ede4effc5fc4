#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "measure/card_fit.h"
#include "measure/decoded.h"

namespace strandline::card {
namespace {

constexpr double kBrightest = 252.5, kDarkest = 6;  // codes at which a channel may have been cut off

tl::unexpected<Problems> refuse(const char* code) { return tl::unexpected(Problems{{code, "", {}}}); }

bool white(const Patch& p) { return p.grey && p.print[0] == 1; }

bool whole(const Code& code) {
  return *std::min_element(code.begin(), code.end()) > kDarkest &&
         *std::max_element(code.begin(), code.end()) < kBrightest;
}

Linear light_of(const Code& code) { return {decoded(code[0]), decoded(code[1]), decoded(code[2])}; }

// Light over the card as a plane through its white patches, 1 in the middle.
class Fall {
 public:
  explicit Fall(const std::vector<Code>& codes) {
    const auto& all = patches();
    Eigen::Matrix3d normal = Eigen::Matrix3d::Zero();
    Eigen::Vector3d right = Eigen::Vector3d::Zero();
    for (size_t i = 0; i < all.size(); ++i) {
      if (!white(all[i])) continue;
      const Linear v = light_of(codes[i]);
      const Eigen::Vector3d at = place(all[i].x_mm + patch_mm / 2, all[i].y_mm + patch_mm / 2);
      normal += at * at.transpose(), right += at * (v[0] + v[1] + v[2]) / 3;
    }
    plane_ = normal.ldlt().solve(right);
    plane_ /= std::max(1e-6, plane_[0]);
  }
  Linear even(Linear v, double x_mm, double y_mm) const {
    constexpr double kLeast = 0.2;
    for (double& c : v) c /= std::max(kLeast, plane_.dot(place(x_mm, y_mm)));
    return v;
  }
  double from_end_to_end() const { return std::abs(plane_[1]) + std::abs(plane_[2]); }

 private:
  static Eigen::Vector3d place(double x_mm, double y_mm) { return {1, x_mm / width_mm - 0.5, y_mm / height_mm - 0.5}; }
  Eigen::Vector3d plane_;
};

// A rising curve through points: cubic between them without overshooting (Fritsch and Butland 1984), straight on
// beyond.
class Curve {
 public:
  void add(double x, double y) {
    constexpr double kApart = 1e-4;
    if (x_.empty() || (x > x_.back() + kApart && y > y_.back())) x_.push_back(x), y_.push_back(y);
  }
  bool ready() const { return x_.size() >= 3; }
  void close() {
    const size_t n = x_.size();
    slope_.resize(n);
    for (size_t i = 1; i + 1 < n; ++i) {
      const double h0 = x_[i] - x_[i - 1], h1 = x_[i + 1] - x_[i], w0 = 2 * h1 + h0, w1 = h1 + 2 * h0;
      slope_[i] = (w0 + w1) / (w0 / rise(i - 1) + w1 / rise(i));
    }
    slope_[0] = rise(0), slope_[n - 1] = rise(n - 2);
  }
  double operator()(double x) const {
    if (x <= x_.front()) return y_.front() + slope_.front() * (x - x_.front());
    if (x >= x_.back()) return y_.back() + slope_.back() * (x - x_.back());
    const auto i = static_cast<size_t>(std::upper_bound(x_.begin(), x_.end(), x) - x_.begin()) - 1;
    const double h = x_[i + 1] - x_[i], t = (x - x_[i]) / h, u = 1 - t;
    return u * u * (1 + 2 * t) * y_[i] + t * t * (3 - 2 * t) * y_[i + 1] +
           h * t * u * (u * slope_[i] - t * slope_[i + 1]);
  }

 private:
  double rise(size_t i) const { return (y_[i + 1] - y_[i]) / (x_[i + 1] - x_[i]); }
  std::vector<double> x_, y_, slope_;
};

}  // namespace

Result<Even> evened(const Codes& seen) {
  constexpr double kLeastWhite = 70, kMostFall = 0.4;
  const auto& all = patches();
  if (seen.patches.size() != all.size()) return refuse("card_picture");
  for (size_t i = 0; i < all.size(); ++i) {
    if (!white(all[i])) continue;
    const double most = *std::max_element(seen.patches[i].begin(), seen.patches[i].end());
    if (most >= kBrightest) return refuse("card_clipped");
    if (most < kLeastWhite) return refuse("card_dark");
  }
  if (!whole(seen.strand)) return refuse("card_strand_clipped");
  const Fall fall(seen.patches);
  if (fall.from_end_to_end() > kMostFall) return refuse("card_uneven");
  Even out;
  for (size_t i = 0; i < all.size(); ++i) {
    out.patches.push_back(fall.even(light_of(seen.patches[i]), all[i].x_mm + patch_mm / 2, all[i].y_mm + patch_mm / 2));
    out.usable.push_back(whole(seen.patches[i]));
  }
  const Box w = window();
  out.strand = fall.even(light_of(seen.strand), w.x_mm + w.width_mm / 2, w.y_mm + w.height_mm / 2);
  return out;
}

std::vector<Linear> luminances(std::span<const measured::Sample> references) {
  const Xyz& d65 = weights(Light::daylight, Observer::cie_1964_10deg).white;
  std::vector<Linear> out;
  for (const measured::Sample& s : references) {
    const double y = xyz(s.lab, d65).y / 100;
    out.push_back({y, y, y});
  }
  return out;
}

Even straightened(Even even, const std::vector<Linear>& truly) {
  constexpr double kLeast = 1e-4;
  struct Grey {
    double truly = 0, seen = 0;
  };
  for (size_t k = 0; k < 3; ++k) {
    std::vector<Grey> greys;
    Grey whites;  // all of them together
    double count = 0;
    for (size_t i = 0; i < even.patches.size(); ++i) {
      if (!patches()[i].grey) continue;
      if (white(patches()[i]))
        whites.truly += truly[i][k], whites.seen += even.patches[i][k], ++count;
      else
        greys.push_back({truly[i][k], even.patches[i][k]});
    }
    greys.push_back({whites.truly / count, whites.seen / count});
    std::sort(greys.begin(), greys.end(), [](const Grey& p, const Grey& q) { return p.truly < q.truly; });
    Curve curve;
    for (const Grey& g : greys) curve.add(g.seen, g.truly);
    if (!curve.ready()) continue;
    curve.close();
    for (Linear& v : even.patches) v[k] = std::max(kLeast, curve(v[k]));
    even.strand[k] = std::max(kLeast, curve(even.strand[k]));
  }
  return even;
}

}  // namespace strandline::card
