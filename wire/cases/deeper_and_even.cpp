#include "case.h"

namespace strandline::cases {
namespace {

using T = Tone;
const std::vector<T> kQuiet = {T::natural, T::beige, T::gold};
const std::vector<T> kQuietAsh = {T::natural, T::beige, T::gold, T::ash};

Case salt_and_pepper() {
  const Zones white = {"top/all", "crown/all"}, rest = {"hairline/all", "sides/all"};
  const Zones all = {"top/all", "crown/all", "hairline/all", "sides/all"};
  return {
      "01_salt_and_pepper",
      {{"1.M1", [=](const Offer& o) { return o.colours(all, {{C::permanent}, {6, 6}, {1, 1.5}, {35, 45}, {}}); }},
       {"1.M2",
        [=](const Offer& o) {
          return o.share_bowl(white) && o.colours(white, {{}, {}, {}, {}, {4, 5}, {{T::natural, {0.5, 0.85}}}, kQuiet});
        }},
       {"1.M3",
        [=](const Offer& o) {
          return o.colours(rest,
                           {{}, {}, {}, {}, {4, 5}, {{T::natural, {0.1, 0.45}}, {T::ash, {0, 0.25}}}, kQuietAsh}) &&
                 o.on("sides/all") != o.on("top/all");
        }},
       {"1.M4",
        [=](const Offer& o) {
          return o.starts_before("top/all", "hairline/all") && o.starts_before("top/all", "sides/all") &&
                 o.starts_before("crown/all", "hairline/all") && o.starts_before("crown/all", "sides/all");
        }},
       {"1.M5", [=](const Offer& o) { return Bound{85, 140}.holds(o.grams(all)); }},
       {"1.M6",
        [=](const Offer& o) {
          for (const auto& z : white)
            if (!within(o, z, {3.6, 4.5})) return false;
          for (const auto& z : rest)
            if (!within(o, z, {3.5, 4.3}) || step(o, z, "top/all") > 0.5) return false;
          return std::all_of(all.begin(), all.end(), [&](const auto& z) { return o.contrast(z) <= 1; });
        }},
       {"1.M7",
        [=](const Offer& o) {
          return o.none({C::demi}) && o.strongest() < 9 && o.no_shade(all, {6, 10}) && o.not_alone(white, T::ash) &&
                 o.not_alone(white, T::red) && o.on("top/all") && o.share(*o.on("top/all"), T::natural) >= 0.4;
        }},
       {"1.M8", [](const Offer& o) { return o.says("after_line_shows") && line(o, {1, 3}); }}},
      {{"1.S1", [](const Offer& o) { return o.starts_before("top/all", "crown/all"); }},
       {"1.S2", [=](const Offer& o) { return Bound{0.45, 0.6}.holds(o.grams(white) / std::max(1.0, o.grams(all))); }},
       {"1.S3", [](const Offer& o) { return rebook(o, {3, 5}); }}},
      [](Visit& v) {
        for (Area& a : v.head.areas) {
          a.spans[0].populations[0].share.value = 0.85;
          a.spans[0].populations[1].share.value = 0.15;
        }
      },
      {{"1.M9", [=](const Offer& o) {
          return o.share_bowl(all) && o.colours(all, {{}, {}, {}, {}, {}, {{T::natural, {0, 0.35}}}});
        }}}};
}

Case deeper_long_dense() {
  const std::string lengths = "whole head/lengths", ends = "whole head/ends";
  return {"02_deeper_long_dense",
          {{"2.M1",
            [=](const Offer& o) {
              return o.colours({lengths}, {{C::demi}, {0, 3}, {1, 2}, {15, 25}, {}}) ||
                     o.colours({lengths}, {{C::permanent}, {0, 3}, {1, 1.5}, {25, 35}, {}});
            }},
           {"2.M2",
            [=](const Offer& o) {
              return o.colours(
                  {lengths},
                  {{}, {}, {}, {}, {5, 5.5}, {{T::natural, {0.4, 0.85}}}, {T::natural, T::gold, T::beige, T::copper}});
            }},
           {"2.M3",
            [=](const Offer& o) {
              return (o.on(ends) != o.on(lengths) && o.colours({ends}, {{}, {}, {}, {}, {5.5, 6.5}})) ||
                     (o.share_bowl({lengths, ends}) && Bound{5, 10}.holds(o.minutes(lengths) - o.minutes(ends))) ||
                     o.opens({ends}, {{C::filler}, {}, {}, {}, {}});
            }},
           {"2.M4", [=](const Offer& o) { return o.starts_before(lengths, ends) || o.first(ends); }},
           {"2.M5", [=](const Offer& o) { return Bound{200, 450}.holds(o.grams({lengths, ends})); }},
           {"2.M6",
            [=](const Offer& o) {
              return within(o, lengths, {4.6, 5.5}) && within(o, ends, {4.4, 5.4}) && step(o, lengths, ends) <= 0.5;
            }},
           {"2.M7",
            [=](const Offer& o) {
              return o.strongest() < 6 && o.not_alone({lengths, ends}, T::ash) && o.no_shade({lengths, ends}, {1, 4});
            }},
           {"2.M8",
            [](const Offer& o) { return o.says("after_ends_take_and_fade") && o.says("after_lighter_needs_more"); }}},
          {{"2.S1", [=](const Offer& o) { return o.colours({lengths}, {{C::demi}, {}, {}, {}, {}}); }},
           {"2.S3", [](const Offer& o) { return rebook(o, {5, 8}); }}},
          [=](Visit& v) {
            v.head.hair.hairs_per_cm2 = 200;
            Span& own = span_of(v, ends);
            own.porosity.value = 1;
            span_of(v, lengths).to_cm = 19;
            own.from_cm = 19, own.to_cm = 25;
          },
          {{"2.M9", [=](const Offer& o) {
              return o.share_bowl({lengths, ends}) && Bound{90, 170}.holds(o.grams({lengths, ends}));
            }}}};
}

Case red_refresh() {
  const std::string growth = "whole head/regrowth", mids = "whole head/mids", ends = "whole head/ends";
  return {"03_red_refresh",
          {{"3.M1",
            [=](const Offer& o) {
              return o.colours(
                  {growth},
                  {{C::permanent}, {3, 6}, {1, 1.5}, {30, 40}, {5, 6}, {{T::natural, {0, 0.3}}, {T::red, {0.5, 1}}}});
            }},
           {"3.M2",
            [=](const Offer& o) {
              return o.colours({mids}, {{C::demi},
                                        {0, 3},
                                        {},
                                        {10, 20},
                                        {5.5, 6},
                                        {{T::natural, {0, 0.3}}, {T::copper, {0, 0.3}}, {T::gold, {0, 0.3}}}});
            }},
           {"3.M3",
            [=](const Offer& o) { return o.nothing(ends) || o.colours({ends}, {{C::demi}, {0, 3}, {}, {3, 10}, {}}); }},
           {"3.M4",
            [=](const Offer& o) {
              return o.starts_before(growth, mids) && (o.nothing(ends) || o.starts_before(mids, ends));
            }},
           {"3.M5",
            [=](const Offer& o) {
              return Bound{35, 70}.holds(o.grams({growth})) && Bound{50, 125}.holds(o.grams({mids, ends}));
            }},
           {"3.M6",
            [=](const Offer& o) {
              const auto red = [&](const auto& z) { return o.zone(z).result.planned.named.tone == T::red; };
              return within(o, growth, {5.2, 6}) && within(o, mids, {5.2, 6}) && within(o, ends, {5, 5.8}) &&
                     red(growth) && red(mids) && red(ends) && step(o, growth, mids) <= 0.5 &&
                     step(o, mids, ends) <= 0.5;
            }},
           {"3.M7",
            [=](const Offer& o) {
              return o.none_on({mids, ends}, {C::permanent}) && o.strongest_on(mids) < 6 && o.strongest_on(ends) < 6 &&
                     o.none({C::lightener, C::remover}) &&
                     o.colours({growth, mids}, {{}, {}, {}, {}, {}, {{T::ash, {0, 0}}, {T::green, {0, 0}}}});
            }},
           {"3.M8",
            [](const Offer& o) {
              return o.says("after_red_fades_first") && lasts(o, {2, 5}) && o.says("after_growth_may_glow");
            }}},
          {{"3.S1", [](const Offer& o) { return rebook(o, {4, 6}); }}},
          [=](Visit& v) {
            Span& own = span_of(v, mids);
            own.populations[0].level.value = 5.5;
            own.populations[0].tone = T::red;
            own.porosity.value = 1;
          },
          {{"3.M9", [=](const Offer& o) {
              return (o.nothing(mids) || o.colours({mids}, {{C::demi}, {}, {}, {0, 10}, {}})) && o.nothing(ends);
            }}}};
}

Case blend() {
  const Zones all = {"top/all", "sides/all", "back/all"};
  const auto fibre = [](const Offer& o, const std::string& z, FibreKind kind) {
    for (const PopulationColour& p : o.zone(z).result.planned.populations)
      if (p.kind == kind) return p.named.level;
    return 0.0;
  };
  return {
      "04_blend_no_line",
      {{"4.M1", [=](const Offer& o) { return o.colours(all, {{C::demi}, {0, 3}, {1, 2}, {10, 20}, {}}); }},
       {"4.M2",
        [=](const Offer& o) {
          return o.share_bowl(all) &&
                 o.colours(all, {{}, {}, {}, {}, {6, 7}, {{T::natural, {0.25, 0.6}}, {T::ash, {0, 0.25}}}, kQuietAsh});
        }},
       {"4.M3",
        [=](const Offer& o) {
          return std::all_of(all.begin(), all.end(), [&](const auto& z) {
            const double own = fibre(o, z, FibreKind::pigmented);
            return Bound{5.4, 6.1}.holds(own) && Bound{1, 3}.holds(fibre(o, z, FibreKind::white) - own);
          });
        }},
       {"4.M4", [=](const Offer& o) { return step(o, all[0], all[1]) <= 0.5 && step(o, all[0], all[2]) <= 0.5; }},
       {"4.M5", [=](const Offer& o) { return Bound{70, 150}.holds(o.grams(all)); }},
       {"4.M6", [=](const Offer& o) { return o.none({C::permanent}) && o.strongest() < 6 && o.no_shade(all, {1, 5}); }},
       {"4.M7", [](const Offer& o) { return o.says("after_blended_not_covered") && lasts(o, {4, 8}); }}},
      {{"4.S1", [=](const Offer& o) { return o.colours(all, {{}, {}, {}, {}, {6.5, 7}}); }},
       {"4.S2", [](const Offer& o) { return o.starts_before("top/all", "sides/all"); }},
       {"4.S3", [](const Offer& o) { return rebook(o, {6, 8}); }}},
      [](Visit& v) { v.aims[0].blend.reset(), v.aims[0].level = 6; },  // not one white hair
      {{"4.M8", [=](const Offer& o) {
          return o.colours(all, {{C::permanent}, {6, 6}, {}, {35, 45}, {6, 6}, {{T::natural, {0.25, 0.45}}}}) &&
                 o.says("after_line_shows") && line(o, {2, 5});
        }}}};
}

}  // namespace

std::vector<Case> deeper_and_even() { return {salt_and_pepper(), deeper_long_dense(), red_refresh(), blend()}; }

}  // namespace strandline::cases
