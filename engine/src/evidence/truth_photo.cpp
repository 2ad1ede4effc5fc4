#include "evidence/truth_photo.h"

#include <algorithm>
#include <cmath>

namespace strandline::truth {
namespace {

constexpr double kRadians = M_PI / 180;

// Where the ray through a pixel meets the sheet, in millimetres from its middle: a pinhole camera two and a half widths
// away, turned about the sheet's middle.
class Pinhole {
 public:
  Pinhole(const Sheet& sheet, const Pose& pose, int width, int height)
      : far_(2.5 * sheet.width_mm), shift_x_(pose.shift_x * width), shift_y_(pose.shift_y * height) {
    const double ca = std::cos(pose.tilt_x * kRadians), sa = std::sin(pose.tilt_x * kRadians);
    const double cb = std::cos(pose.tilt_y * kRadians), sb = std::sin(pose.tilt_y * kRadians);
    const double cg = std::cos(pose.turn_degrees * kRadians), sg = std::sin(pose.turn_degrees * kRadians);
    // Rotation of the sheet: about its own y, its own x, then in the picture's plane.
    const double x_axis[3] = {ca, 0, sa}, y_axis[3] = {sb * sa, cb, -sb * ca};
    for (int k = 0; k < 3; ++k) {
      const double to[2] = {x_axis[k], y_axis[k]};
      along_x_[k] = to[0], along_y_[k] = to[1];
    }
    turn(along_x_, cg, sg), turn(along_y_, cg, sg);
    const double across = std::abs(cg) * sheet.width_mm + std::abs(sg) * sheet.height_mm;
    const double down = std::abs(sg) * sheet.width_mm + std::abs(cg) * sheet.height_mm;
    focal_ = far_ * pose.fills * std::min(width / across, height / down);
    middle_x_ = width / 2.0, middle_y_ = height / 2.0;
  }

  void meet(double px, double py, double& x, double& y) const {
    const double u = (px - middle_x_ - shift_x_) / focal_, v = (py - middle_y_ - shift_y_) / focal_;
    // s·X + t·Y + (0, 0, far) = k·(u, v, 1)
    const double a = along_x_[0] - u * along_x_[2], b = along_y_[0] - u * along_y_[2];
    const double c = along_x_[1] - v * along_x_[2], d = along_y_[1] - v * along_y_[2];
    const double det = a * d - b * c;
    x = far_ * (u * d - v * b) / det, y = far_ * (a * v - c * u) / det;
  }

 private:
  static void turn(double* v, double c, double s) {
    const double x = v[0], y = v[1];
    v[0] = c * x - s * y, v[1] = s * x + c * y;
  }
  double far_, focal_ = 1, middle_x_ = 0, middle_y_ = 0, shift_x_, shift_y_;
  double along_x_[3] = {}, along_y_[3] = {};
};

bool in(const Shape& s, double x, double y) {
  if (s.disk) return std::hypot(x - s.x_mm, y - s.y_mm) <= s.width_mm / 2;
  return x >= s.x_mm && x < s.x_mm + s.width_mm && y >= s.y_mm && y < s.y_mm + s.height_mm;
}

}  // namespace

Pixels picture(const Sheet& sheet, const Camera& camera, const Pose& pose, int width, int height, Random& random) {
  const Pinhole pinhole(sheet, pose, width, height);
  std::vector<double> sharp(static_cast<size_t>(width) * static_cast<size_t>(height) * 3);
  std::vector<Spot> row(static_cast<size_t>(width));
  for (int py = 0; py < height; ++py) {
    for (int px = 0; px < width; ++px) {
      double x = 0, y = 0;
      pinhole.meet(px + 0.5, py + 0.5, x, y);
      x += sheet.width_mm / 2, y += sheet.height_mm / 2;
      const bool on = x >= 0 && y >= 0 && x < sheet.width_mm && y < sheet.height_mm;
      Spot& spot = row[static_cast<size_t>(px)];
      spot = {x / sheet.width_mm, y / sheet.height_mm, on ? sheet.paper : sheet.table, 100};
      const Shape* top = nullptr;
      for (const Shape& s : sheet.shapes)
        if (on && in(s, x, y)) top = &s;
      if (!top) continue;
      spot.reflectance = top->reflectance;
      if (top->streaks > 0) {
        const double light = 1 + top->streaks * std::sin(7 * x + 2 * std::sin(0.9 * y));
        for (double& r : spot.reflectance) r *= light;
      }
    }
    const auto codes = camera.photo(row, random);
    for (int px = 0; px < width; ++px)
      for (int k = 0; k < 3; ++k)
        sharp[3 * (static_cast<size_t>(py) * static_cast<size_t>(width) + static_cast<size_t>(px)) +
              static_cast<size_t>(k)] = codes[static_cast<size_t>(px)][static_cast<size_t>(k)];
  }
  Pixels out{width, height, std::vector<std::uint8_t>(sharp.size())};
  for (int py = 0; py < height; ++py)
    for (int px = 0; px < width; ++px)
      for (int k = 0; k < 3; ++k) {
        double sum = 0, weight = 0;
        for (int dy = -1; dy <= 1; ++dy)
          for (int dx = -1; dx <= 1; ++dx) {
            const int qx = std::clamp(px + dx, 0, width - 1), qy = std::clamp(py + dy, 0, height - 1);
            const double w = (dx ? 1 : 2) * (dy ? 1 : 2);
            sum += w * sharp[3 * (static_cast<size_t>(qy) * static_cast<size_t>(width) + static_cast<size_t>(qx)) +
                             static_cast<size_t>(k)];
            weight += w;
          }
        out.rgb[3 * (static_cast<size_t>(py) * static_cast<size_t>(width) + static_cast<size_t>(px)) +
                static_cast<size_t>(k)] = static_cast<std::uint8_t>(std::clamp(std::lround(sum / weight), 0L, 255L));
      }
  return out;
}

}  // namespace strandline::truth
