#include "engine/oracle/enumerate.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "mix/habits.h"
#include "mix/pour.h"
#include "mix/within.h"

namespace strandline {
namespace {

constexpr int kBlock = 256;  // recipes evaluated together
// All that one setting needs to evaluate recipes on the zones it may touch.
struct SettingRun {
  std::vector<std::vector<ZoneTable>> tables;  // per zone one for each time; empty where forbidden
  std::vector<bool> group_allowed;
};

SettingRun prepare(const Setting& setting, const std::vector<SearchZone>& zones, const std::vector<ZoneGroup>& groups,
                   const Draws& draws, const FormulaPolicy& policy) {
  SettingRun run;
  run.tables.resize(zones.size());
  run.group_allowed.assign(groups.size(), true);
  for (size_t g = 0; g < groups.size(); ++g)
    for (int z : groups[g].zones) {
      const SearchZone& zone = zones[static_cast<size_t>(z)];
      if (!forbidden(setting, *zone.span, policy).empty() || out_of_place(setting, zone) ||
          times_within(setting, zone).empty())
        run.group_allowed[g] = false;
    }
  for (size_t g = 0; g < groups.size(); ++g)
    if (run.group_allowed[g])
      for (int z : groups[g].zones)
        for (double minutes : times_within(setting, zones[static_cast<size_t>(z)])) {
          const SearchZone& zone = zones[static_cast<size_t>(z)];
          run.tables[static_cast<size_t>(z)].push_back(
              zone_table(*zone.draws, bare_chemistry(setting, minutes + zone.half_touch), draws));
        }
  return run;
}

}  // namespace

Enumeration enumerate(const Domain& domain, const std::vector<SearchZone>& zones, const std::vector<ZoneGroup>& groups,
                      const Draws& draws, double total_weight, const FormulaPolicy& policy,
                      const FormulateOptions& options, const std::vector<MixGrams>& grams) {
  const size_t masks = size_t{1} << groups.size();
  Enumeration out;
  out.best.resize(masks);
  // Work pieces: a setting and a stretch of its recipes.
  constexpr int kPiece = 16384;
  struct Piece {
    int setting, begin, end;
  };
  std::vector<Piece> pieces;
  std::vector<std::vector<Shares>> shares_of;
  for (const RecipeSet& set : domain.sets) shares_of.push_back(set.shares());
  std::vector<SettingRun> runs(domain.settings.size());
  options.parallel(static_cast<int>(runs.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i)
      runs[static_cast<size_t>(i)] =
          prepare(domain.settings[static_cast<size_t>(i)].setting, zones, groups, draws, policy);
  });
  for (size_t i = 0; i < runs.size(); ++i) {
    const int n = static_cast<int>(shares_of[static_cast<size_t>(domain.settings[i].set)].size());
    for (int b = 0; b < n; b += kPiece) pieces.push_back({static_cast<int>(i), b, std::min(n, b + kPiece)});
  }

  std::vector<std::vector<BestFew>> found(pieces.size());
  auto run_piece = [&](size_t index) {
    const Piece piece = pieces[index];
    const SettingRun& run = runs[static_cast<size_t>(piece.setting)];
    const Domain::OneSetting& one = domain.settings[static_cast<size_t>(piece.setting)];
    const RecipeSet& set = domain.sets[static_cast<size_t>(one.set)];
    const Shares* own = shares_of[static_cast<size_t>(one.set)].data() + piece.begin;
    std::vector<BestFew>& best = found[index];
    best.resize(masks);
    std::vector<float> loads(kBlock * kBands), losses(kBlock);
    std::vector<double> group_loss(groups.size() * kBlock);
    for (int begin = piece.begin; begin < piece.end; begin += kBlock) {
      if (options.cancelled()) return;
      const int count = std::min(kBlock, piece.end - begin);
      for (int i = 0; i < count; ++i) {
        const Spectrum load = set.load(own[begin - piece.begin + i], one.setting.ratio);
        for (int b = 0; b < kBands; ++b) loads[static_cast<size_t>(i * kBands + b)] = static_cast<float>(load[b]);
      }
      std::fill(group_loss.begin(), group_loss.end(), 0);
      for (size_t g = 0; g < groups.size(); ++g) {
        if (!run.group_allowed[g]) continue;
        for (int z : groups[g].zones) {
          const SearchZone& zone = zones[static_cast<size_t>(z)];
          std::vector<double> least(kBlock, std::numeric_limits<double>::infinity());
          for (const ZoneTable& table : run.tables[static_cast<size_t>(z)]) {
            mean_losses(table, zone.price, loads.data(), count, losses.data());
            const double same = setting_price(one.setting, zone, table.exposure);
            for (size_t i = 0; i < static_cast<size_t>(count); ++i)
              least[i] = std::min(least[i], static_cast<double>(losses[i]) + same);
          }
          for (size_t i = 0; i < static_cast<size_t>(count); ++i)
            group_loss[g * kBlock + i] += zone.weight / total_weight * least[i];
        }
      }
      for (size_t mask = 1; mask < masks; ++mask) {
        bool allowed = true;
        for (size_t g = 0; g < groups.size(); ++g) allowed = allowed && (!(mask >> g & 1) || run.group_allowed[g]);
        if (!allowed) continue;
        for (int i = 0; i < count; ++i) {
          const Shares& shares = own[begin - piece.begin + i];
          double sum = 0;
          for (size_t g = 0; g < groups.size(); ++g)
            if (mask >> g & 1) sum += group_loss[g * kBlock + static_cast<size_t>(i)];
          if (!grams.empty() && sum <= best[mask].limit())
            sum += poured_price(set, shares, one.setting, grams[mask].of(*one.setting.range), *domain.shelf, policy);
          if (std::isfinite(sum)) best[mask].offer({sum, one.set, piece.setting, shares});
        }
      }
    }
  };
  options.parallel(static_cast<int>(pieces.size()), [&](int begin, int end) {
    for (int i = begin; i < end; ++i) run_piece(static_cast<size_t>(i));
  });

  for (size_t mask = 1; mask < masks; ++mask) {
    BestFew all;
    for (auto& piece : found)
      if (!piece.empty()) all.merge(piece[mask]);
    out.best[mask] = all.take();
  }
  for (const Piece& p : pieces) {
    out.recipes += p.end - p.begin;
    const SettingRun& run = runs[static_cast<size_t>(p.setting)];
    for (const auto& zone : run.tables)
      for (const ZoneTable& t : zone) out.evaluations += static_cast<long long>(t.scenarios) * (p.end - p.begin);
  }
  out.cancelled = options.cancelled();
  return out;
}

}  // namespace strandline
