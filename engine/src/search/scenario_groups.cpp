#include "search/scenario_groups.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "search/curve_nodes.h"

namespace strandline {
namespace {

using Features = std::array<double, 3>;  // lightness, along and across the warm axis, in levels

double dot(const Features& a, const Features& b) { return std::inner_product(a.begin(), a.end(), b.begin(), 0.0); }

std::vector<ScenarioColour> colours_under(const ZoneTable& zone, float load) {
  return colours(zone, std::vector<float>(kBands, load).data());
}

// The load, the same in all bands, that makes the zone as dark as the wish, or as near as it gets.
float wanted_depth(const ZoneTable& zone, double lightness, float load_max) {
  float low = 0, high = load_max;
  constexpr int kHalvings = 12;
  for (int i = 0; i < kHalvings; ++i) {
    const float middle = 0.5F * (low + high);
    double sum = 0;
    for (const ScenarioColour& c : colours_under(zone, middle)) sum += c.lab.l - lightness;
    (sum > 0 ? low : high) = middle;
  }
  return low;
}

std::vector<Features> features(const ZoneTable& zone, const ZoneLoss& z, float load) {
  std::vector<Features> all;
  for (const ScenarioColour& c : colours_under(zone, load)) {
    const double along = z.axis.a * c.lab.a + z.axis.b * c.lab.b, across = z.axis.b * c.lab.a - z.axis.a * c.lab.b;
    all.push_back(
        {0.5 * (z.dark + z.light) * c.lab.l, 0.5 * (z.warm + z.cool) * along, 0.5 * (z.red + z.green) * across});
  }
  return all;
}

// The direction in which these differ most, by power iteration.
Features leading_direction(const std::vector<Features>& all, const int* begin, const int* end) {
  Features mean{};
  for (const int* s = begin; s != end; ++s)
    for (size_t i = 0; i < mean.size(); ++i)
      mean[i] += all[static_cast<size_t>(*s)][i] / static_cast<double>(end - begin);
  Features direction{1, 0.1, 0.1};
  constexpr int kRounds = 20;
  for (int round = 0; round < kRounds; ++round) {
    Features next{};
    for (const int* s = begin; s != end; ++s) {
      Features off = all[static_cast<size_t>(*s)];
      for (size_t i = 0; i < mean.size(); ++i) off[i] -= mean[i];
      const double along = dot(off, direction);
      for (size_t i = 0; i < mean.size(); ++i) next[i] += along * off[i];
    }
    const double length = std::sqrt(dot(next, next));
    if (length < 1e-12) break;
    for (size_t i = 0; i < mean.size(); ++i) direction[i] = next[i] / length;
  }
  return direction;
}

std::vector<std::vector<int>> halved(const std::vector<Features>& all, int groups) {
  std::vector<int> order(all.size());
  std::iota(order.begin(), order.end(), 0);
  std::vector<std::vector<int>> members;
  auto split = [&](auto&& self, int* begin, int* end, int count) -> void {
    if (count == 1) {
      members.emplace_back(begin, end);
      return;
    }
    const Features direction = leading_direction(all, begin, end);
    std::sort(begin, end, [&](int a, int b) {
      const double x = dot(all[static_cast<size_t>(a)], direction), y = dot(all[static_cast<size_t>(b)], direction);
      return x != y ? x < y : a < b;
    });
    int* middle = begin + (end - begin) / 2;
    self(self, begin, middle, count / 2);
    self(self, middle, end, count / 2);
  };
  split(split, order.data(), order.data() + order.size(), groups);
  return members;
}

// Columns of `rows` rows by position; places that are not filled repeat the first scenario.
void reorder(const std::vector<float>& from, int from_stride, const std::vector<int>& at, std::vector<float>& to) {
  const size_t rows = from.size() / static_cast<size_t>(from_stride), stride = at.size();
  to.resize(rows * stride);
  for (size_t r = 0; r < rows; ++r)
    for (size_t i = 0; i < stride; ++i)
      to[r * stride + i] = from[r * static_cast<size_t>(from_stride) + static_cast<size_t>(std::max(0, at[i]))];
}

// Scenarios are averaged as if all of a group were as light as its mean, so that little spread is left.
GroupWeights weights_of(const std::vector<float>& light, const std::vector<int>& at, int groups) {
  GroupWeights w;
  w.part.assign(at.size(), 0);
  w.unit.assign(at.size(), 0);
  double least = 1;
  for (size_t g = 0; g < static_cast<size_t>(groups); ++g) {
    double roots = 0, count = 0;
    for (size_t i = g; i < at.size(); i += static_cast<size_t>(groups))
      if (at[i] >= 0) roots += std::cbrt(static_cast<double>(light[i])), count += 1;
    if (count == 0) continue;
    const double mean = roots / count;
    for (size_t i = g; i < at.size(); i += static_cast<size_t>(groups)) {
      if (at[i] < 0) continue;
      const double part = std::cbrt(static_cast<double>(light[i])) / roots;
      w.part[i] = static_cast<float>(part);
      w.unit[i] = static_cast<float>(mean * mean * mean / static_cast<double>(light[i]));
      least = std::min(least, part);
    }
  }
  w.furthest = 1.0001 / std::sqrt(least);
  return w;
}

}  // namespace

GroupedZone group_scenarios(const ZoneTable& zone, const ZoneLoss& loss, float load_max, int groups) {
  const float depth = wanted_depth(zone, loss.target.l, load_max);
  const std::vector<std::vector<int>> members = halved(features(zone, loss, depth), groups);
  GroupedZone out;
  out.groups = groups;
  size_t most = 0;
  for (const auto& m : members) most = std::max(most, m.size());
  constexpr size_t kLanes = kGroupsMostOfScenarios;  // whole vectors of every processor
  const size_t count = static_cast<size_t>(groups), stride = (most * count + kLanes - 1) / kLanes * kLanes;
  std::vector<int> at(stride, -1);
  out.contrast.assign(count, zone.has_contrast ? 1 : 0);
  const size_t scenarios = static_cast<size_t>(zone.scenarios);
  for (size_t g = 0; g < count; ++g) {
    out.weight.push_back(static_cast<float>(members[g].size()) / static_cast<float>(scenarios));
    for (size_t m = 0; m < members[g].size(); ++m) {
      const int s = at[m * count + g] = members[g][m];
      double share[2] = {0, 0};
      for (size_t p = 0; p < static_cast<size_t>(zone.populations); ++p)
        share[zone.white[p]] += zone.exact_share[p * scenarios + static_cast<size_t>(s)];
      if (share[0] <= 0.0101 || share[1] <= 0.0101) out.contrast[g] = 0;
    }
  }
  out.zone.scenarios = zone.scenarios;
  out.zone.stride = static_cast<int>(stride);
  out.zone.populations = zone.populations;
  out.zone.prefer = zone.prefer;
  out.zone.white = zone.white;
  out.zone.has_contrast = zone.has_contrast;
  reorder(zone.base, zone.stride, at, out.zone.base);
  reorder(zone.uptake, zone.stride, at, out.zone.uptake);
  reorder(zone.share, zone.stride, at, out.zone.share);
  reorder(zone.blend_m, zone.stride, at, out.zone.blend_m);
  const Luminance light = luminance(out.zone, depth);
  out.blend = weights_of(light.blend, at, groups);
  out.white = weights_of(light.white, at, groups);
  out.pigmented = weights_of(light.pigmented, at, groups);
  return out;
}

}  // namespace strandline
