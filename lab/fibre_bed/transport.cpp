#include "transport.h"

#include <algorithm>
#include <numeric>

namespace strandline::fibre_bed {

double Photon::path_below(int bins) const { return std::accumulate(path.begin(), path.begin() + bins, 0.0); }

Packing pack(const BedSpec& bed, uint64_t seed) {
  return Packing({.fraction = bed.fraction, .side = 20, .row = bed.top == Top::flat, .seed = seed});
}

namespace {

constexpr double kRadius = 0.5;
constexpr double kFirstRoulette = 8, kRouletteStep = 3;
constexpr uint64_t kNoFibre = ~0ULL;

Vector3 launch_direction(const Launch& launch, Random& random) {
  const double low = std::sin(launch.polar_low), high = std::sin(launch.polar_high);
  const double sine = std::sqrt(low * low + random.uniform() * (high * high - low * low));
  const double turn = random.uniform() * 2 * std::numbers::pi;
  const double azimuth = launch.azimuth.value_or(turn);
  return {sine * std::cos(azimuth), sine * std::sin(azimuth), std::sqrt(1 - sine * sine)};
}

// Henyey-Greenstein.
Vector3 scattered(Vector3 d, double g, Random& random) {
  double cosine = 2 * random.uniform() - 1;
  if (std::abs(g) > 1e-3) {
    const double f = (1 - g * g) / (1 + g * cosine);
    cosine = std::clamp((1 + g * g - f * f) / (2 * g), -1.0, 1.0);
  }
  const double sine = std::sqrt(1 - cosine * cosine), turn = random.uniform() * 2 * std::numbers::pi;
  const Vector3 a = normalized(std::abs(d.x) < 0.9 ? Vector3{0, d.z, -d.y} : Vector3{-d.z, 0, d.x});
  const Vector3 b{d.y * a.z - d.z * a.y, d.z * a.x - d.x * a.z, d.x * a.y - d.y * a.x};
  return normalized(cosine * d + sine * std::cos(turn) * a + sine * std::sin(turn) * b);
}

class Life {
 public:
  Life(const BedSpec& bed, const Packing& packing, double longest, uint64_t seed, uint64_t index)
      : bed_(bed),
        packing_(packing),
        longest_(longest),
        random_(seed, index),
        labels_(mix(seed ^ 0x6c6162656cULL, index)) {}

  Photon run(const Launch& launch) {
    top_ = bed_.top == Top::flat ? 0 : random_.uniform() * packing_.side();
    bottom_ = top_ + std::min(bed_.depth, 1e12);
    at_ = {random_.uniform() * packing_.side(), top_};
    direction_ = photon_.launched = launch_direction(launch, random_);
    while (fly()) {
    }
    photon_.direction = direction_;
    return photon_;
  }

 private:
  bool finish(Photon::End end) {
    photon_.end = end;
    return false;
  }

  bool exists(Point centre, uint64_t fibre) const {
    const double below = centre.z - top_ - kRadius, above = bottom_ - centre.z - kRadius;
    if (below < -1e-9 || above < 0) return false;
    return bed_.top != Top::loose || below >= bed_.loose_depth * unit(mix(labels_ ^ 0x6c6f6f7365ULL, fibre));
  }

  // Through the air to the next fibre and through or off it. False when the photon's life is over.
  bool fly() {
    const double in_plane = std::hypot(direction_.y, direction_.z);
    if (in_plane < 1e-9) return finish(Photon::End::lost);
    const Point along{direction_.y / in_plane, direction_.z / in_plane};
    const auto hit =
        packing_.first_hit(at_, along, left_, top_, bottom_, [this](Point c, uint64_t f) { return exists(c, f); });
    if (!hit) {
      if (direction_.z < 0) return finish(Photon::End::returned);
      if (!bed_.mirror_below) return finish(Photon::End::passed);
      const double distance = (bottom_ - at_.z) / along.z;
      at_ = {at_.y + distance * along.y, bottom_};
      direction_.z = -direction_.z;
      left_ = kNoFibre;
      return true;
    }
    at_ = {at_.y + hit->distance * along.y, at_.z + hit->distance * along.z};
    left_ = hit->fibre;
    return meet(*hit) && roulette();
  }

  bool meet(const Packing::Hit& hit) {
    Point p{at_.y - hit.centre.y, at_.z - hit.centre.z};  // from the axis
    Crossing c = cross(bed_.surface, direction_, normal(p), false, random_);
    if (c.inside) {
      const double label = unit(mix(labels_, label_key(hit)));
      const double before = length_;
      while (c.inside) {
        if (!go_through(p, c.direction, label < bed_.scatter.share)) return finish(Photon::End::lost);
        c = cross(bed_.surface, c.direction, normal(p), true, random_);
      }
      photon_.path[static_cast<int>(label * kBins)] += length_ - before;
    }
    direction_ = c.direction;
    at_ = {hit.centre.y + p.y, hit.centre.z + p.z};
    return true;
  }

  static Vector3 normal(Point p) {
    const double r = std::hypot(p.y, p.z);
    return {0, p.y / r, p.z / r};
  }

  // Fibres of a packet share a label; its squares are shifted from photon to photon.
  uint64_t label_key(const Packing::Hit& hit) const {
    if (bed_.packet <= 0) return hit.fibre;
    const double shift_y = unit(mix(labels_, 1)), shift_z = unit(mix(labels_, 2));
    const auto y = static_cast<int64_t>(std::floor(hit.centre.y / bed_.packet + shift_y));
    const auto z = static_cast<int64_t>(std::floor(hit.centre.z / bed_.packet + shift_z));
    return mix(static_cast<uint64_t>(y), static_cast<uint64_t>(z));
  }

  // From `p` on or in the fibre to its surface, scattered on the way in the core. False when that takes too
  // long.
  bool go_through(Point& p, Vector3& d, bool scatters) {
    while (true) {
      const double in_plane = std::hypot(d.y, d.z);
      if (in_plane < 1e-9) return false;
      const Point u{d.y / in_plane, d.z / in_plane};
      const double b = p.y * u.y + p.z * u.z, square = p.y * p.y + p.z * p.z;
      double stop = -b + std::sqrt(std::max(0.0, b * b - square + kRadius * kRadius));
      bool event = false;
      if (const InnerScatter& s = bed_.scatter; scatters && s.coefficient > 0) {
        const double core = s.core * kRadius, inside2 = b * b - square + core * core;
        if (inside2 > 0) {
          const double half = std::sqrt(inside2), enter = std::max(0.0, -b - half), leave = std::min(stop, -b + half);
          const double free = -std::log(1 - random_.uniform()) / s.coefficient * in_plane;
          if (enter + free < leave) stop = enter + free, event = true;
        }
      }
      p = {p.y + stop * u.y, p.z + stop * u.z};
      length_ += stop / in_plane;
      if (length_ > longest_) return false;
      if (!event) return true;
      d = scattered(d, bed_.scatter.anisotropy, random_);
    }
  }

  bool roulette() {
    while (length_ > next_roulette_) {
      next_roulette_ *= kRouletteStep;
      if (random_.uniform() < 0.5) {
        photon_.weight = 0;
        return finish(Photon::End::lost);
      }
      photon_.weight *= 2;
    }
    return true;
  }

  const BedSpec& bed_;
  const Packing& packing_;
  double longest_;
  Random random_;
  uint64_t labels_;
  double top_ = 0, bottom_ = 0, length_ = 0, next_roulette_ = kFirstRoulette;
  Point at_;
  Vector3 direction_;
  uint64_t left_ = kNoFibre;
  Photon photon_;
};

}  // namespace

Photon follow(const BedSpec& bed, const Packing& packing, const Launch& launch, double longest, uint64_t seed,
              uint64_t index) {
  return Life(bed, packing, longest, seed, index).run(launch);
}

}  // namespace strandline::fibre_bed
