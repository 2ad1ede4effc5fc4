#include "strandline/fade.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "fade/pools.h"
#include "hair/latin.h"
#include "predict/view.h"

namespace strandline {
namespace {

// Fade varies from head to head too: its constants are drawn here, beyond the columns that every prediction draws.
void draw_fade(std::vector<Constants>& all) {
  constexpr std::uint64_t kFirstDimension = 100000;
  std::uint64_t dimension = kFirstDimension;
  for (const ConstantInfo& info : constant_infos) {
    if (std::string_view(info.file).find("/fade/") == std::string_view::npos || info.sd <= 0) continue;
    const std::vector<double> z = latin_column(static_cast<int>(all.size()), dimension++);
    for (size_t s = 0; s < all.size(); ++s) {
      double& v = all[s].*info.member;
      v = info.log_spread ? v * std::exp(info.sd * z[s]) : std::max(0.0, v + info.sd * z[s]);
    }
  }
}

// One pool keeps its colour as it goes: reds go sooner than the browns beside them.
void add_left(Spectrum& dye, const Spectrum& pool, ProductClass cls, double porosity, double washes, double hours,
              const Constants& c) {
  const double left = dye_left(cls, redness(pool), porosity, washes, hours, c);
  for (int b = 0; b < kBands; ++b) dye[b] += left * pool[b];
}

std::vector<Fibre> faded(std::vector<Fibre> fibres, const std::vector<DyePools>& pools, double washes, double hours,
                         const Constants& c) {
  for (size_t p = 0; p < fibres.size(); ++p) {
    Fibre& f = fibres[p];
    f.dye = Spectrum{};
    add_left(f.dye, pools[p].permanent, ProductClass::permanent, f.porosity, washes, hours, c);
    add_left(f.dye, pools[p].demi, ProductClass::demi, f.porosity, washes, hours, c);
    add_left(f.dye, pools[p].direct, ProductClass::direct, f.porosity, washes, hours, c);
  }
  return fibres;
}

FadeMoment moment(const ZoneDraws& zone, const ZonePools& pools, const Draws& draws, const Habit& habit, int week) {
  ZoneDraws then = zone;
  FadeMoment m;
  m.week = week;
  m.washes = habit.washes_per_week * week;
  const double hours = habit.light_hours_per_week * week;
  then.nominal.fibres = faded(zone.nominal.fibres, pools.nominal, m.washes, hours, draws.nominal);
  for (size_t s = 0; s < then.scenarios.size(); ++s)
    then.scenarios[s].fibres = faded(zone.scenarios[s].fibres, pools.scenarios[s], m.washes, hours, draws.constants[s]);
  const ZoneColour seen = zone_colour(then, draws);
  m.reflectance = seen.reflectance;
  m.lab = seen.lab;
  m.named = seen.named;
  m.level = seen.level;
  return m;
}

// 50 → "50", 2.5 → "2.5".
std::string plain(double v) {
  std::string s = std::to_string(v);
  s.erase(s.find_last_not_of('0') + 1);
  if (s.back() == '.') s.pop_back();
  return s;
}

Problems check_habit(const Habit& h) {
  Problems problems;
  auto within = [&](const char* name, double v, double low, double high) {
    if (!(v >= low && v <= high))
      problems.push_back({"out_of_range",
                          std::string("/habit/") + name,
                          {{"value", plain(v)}, {"min", plain(low)}, {"max", plain(high)}}});
  };
  within("washes", h.washes_per_week, 0, 21);
  within("light", h.light_hours_per_week, 0, 100);
  within("weeks", h.weeks, 1, 52);
  return problems;
}

}  // namespace

double redness(const Spectrum& dye) {
  constexpr int kGreenFrom = 10, kGreenTo = 13, kOrangeFrom = 20, kOrangeTo = 25;  // 500–530 and 600–650 nm
  // A neutral brown still absorbs more in the green: that much is not red.
  constexpr double kBrown = 0.3, kAllRed = 0.8;
  auto mean = [&](int from, int to) {
    double sum = 0;
    for (int b = from; b <= to; ++b) sum += dye[b];
    return sum / (to - from + 1);
  };
  const double green = mean(kGreenFrom, kGreenTo), orange = mean(kOrangeFrom, kOrangeTo);
  if (green + orange <= 0) return 0;
  return std::clamp(((green - orange) / (green + orange) - kBrown) / (kAllRed - kBrown), 0.0, 1.0);
}

double dye_left(ProductClass cls, double red, double porosity, double washes, double hours, const Constants& c) {
  const double damage = std::pow(c.fade_porosity_factor, std::max(0.0, porosity - 1));
  double lost = c.fade_lost_demi, slow = c.fade_slow_washes;
  if (cls == ProductClass::permanent || cls == ProductClass::high_lift) lost = c.fade_lost_permanent;
  if (cls == ProductClass::direct) lost = c.fade_lost_direct, slow *= c.fade_slow_factor_direct;
  lost = std::min(1.0, lost * damage * (1 + (c.fade_red_factor - 1) * red));
  const double fast = std::clamp(red * c.fade_fast_share_red + (1 - red) * c.fade_fast_share_other, 0.0, 1.0);
  const double gone = fast * -std::expm1(-washes / c.fade_fast_washes) + (1 - fast) * -std::expm1(-washes / slow);
  return (1 - lost * gone) * std::exp(-c.fade_light_per_hour * hours);
}

Result<Fading> fade(const Head& head, const std::vector<Step>& steps, const Shelf& shelf, const Habit& habit,
                    const ParallelFor& parallel) {
  Problems problems = check_habit(habit);
  Draws draws = draw(head, kSearchScenarios);
  draw_fade(draws.constants);
  const auto ready = prepared(steps, shelf, draws);
  if (!ready) problems.insert(problems.end(), ready.error().begin(), ready.error().end());
  if (!problems.empty()) return tl::unexpected(problems);

  Fading out;
  out.habit = habit;
  const std::vector<ZoneRef> refs = zones(head);
  out.zones.resize(refs.size());
  const auto fade_one = [&](size_t z) {
    ZoneDraws& zone = draws.zones[z];
    ZonePools pools = pools_as_read(zone, *refs[z].span);
    apply(*ready, zone, draws, pools);
    FadeZone& f = out.zones[z];
    f.zone = zone.id;
    for (int week = 0; week <= habit.weeks; ++week) {
      f.moments.push_back(moment(zone, pools, draws, habit, week));
      FadeMoment& m = f.moments.back();
      m.delta_e_2000 = delta_e_2000(f.moments.front().lab, m.lab);
      if (!f.visible_week && m.delta_e_2000 >= draws.nominal.fade_visible_delta_e) f.visible_week = week;
    }
  };
  parallel(static_cast<int>(refs.size()), [&](int begin, int end) {
    for (int z = begin; z < end; ++z) fade_one(static_cast<size_t>(z));
  });
  return out;
}

}  // namespace strandline
