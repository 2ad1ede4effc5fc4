#include "case.h"

namespace strandline::cases {
namespace {

using T = Tone;

Case too_dark() {
  const std::string roots = "whole head/roots", mids = "whole head/mids", ends = "whole head/ends";
  return {"05_too_dark_same_week",
          {{"5.M1",
            [=](const Offer& o) {
              return o.opens({mids, ends}, {{C::remover}, {}, {}, {10, 20}, {}}) ||
                     o.opens({mids, ends}, {{C::lightener}, {0, 6}, {}, {0, 30}, {}});
            }},
           {"5.M2", [=](const Offer& o) { return o.nothing(roots); }},
           {"5.M3",
            [=](const Offer& o) {
              return o.looks() && o.colours({mids, ends}, {{C::demi},
                                                           {0, 3},
                                                           {},
                                                           {5, 15},
                                                           {6, 6.5},
                                                           {{T::beige, {0, 0.3}}, {T::ash, {0, 0.3}}},
                                                           {T::natural, T::beige, T::ash}});
            }},
           {"5.M4",
            [=](const Offer& o) {
              return within(o, mids, {5, 6}) && within(o, ends, {4.8, 5.9}) &&
                     (step(o, mids, ends) <= 0.5 || o.says("band_stays"));
            }},
           {"5.M5",
            [=](const Offer& o) {
              return Bound{45, 110}.holds(o.grams_of(C::remover)) && Bound{50, 110}.holds(o.grams_of(C::demi));
            }},
           {"5.M6",
            [=](const Offer& o) {
              return o.none({C::permanent, C::high_lift, C::lightener}) && o.strongest() < 9 && o.way;
            }},
           {"5.M7",
            [](const Offer& o) {
              return o.says("after_warmth_shows") && o.says("after_darkens_back") && o.says("after_half_way_is_good") &&
                     o.plan.after.visits_from == 1 && o.plan.after.visits_until == 2;
            }}},
          {{"5.S3", [](const Offer& o) { return rebook(o, {1, 2}); }}},
          [](Visit& v) {
            for (Span& s : v.head.areas[0].spans) s.populations[0].level.value = 5.5;
          },
          {{"5.M8", [](const Offer& o) {
              return o.none({C::remover, C::lightener, C::permanent}) && o.strongest() <= 0 &&
                     o.says("after_wash_and_wait");
            }}}};
}

Case brassy_lights() {
  const Zones lights = {"lights/mids", "lights/ends"}, between = {"between/all", "rest/all", "lights/growth"};
  return {"06_brassy_lights",
          {{"6.M1",
            [=](const Offer& o) {
              return o.colours(lights, {{C::demi}, {0, 3}, {1, 2}, {}, {}}) && o.nothing(between[0]) &&
                     o.nothing(between[1]) && o.nothing(between[2]);
            }},
           {"6.M2",
            [=](const Offer& o) {
              return o.colours(lights, {{},
                                        {},
                                        {},
                                        {},
                                        {8, 9},
                                        {{T::violet, {0.15, 0.5}}, {T::natural, {0, 0.5}}},
                                        {T::violet, T::beige, T::natural}});
            }},
           {"6.M3", [=](const Offer& o) { return o.colours(lights, {{}, {}, {}, {3, 12}, {}}); }},
           {"6.M4",
            [=](const Offer& o) {
              return o.starts_before(lights[0], lights[1]) &&
                     (o.minutes(lights[1]) <= o.minutes(lights[0]) / 2 ||
                      (o.on(lights[0]) != o.on(lights[1]) && o.colours({lights[1]}, {{}, {}, {}, {}, {}})));
            }},
           {"6.M5", [=](const Offer& o) { return within(o, between[0], {5.7, 6.3}); }},
           {"6.M6", [=](const Offer& o) { return Bound{30, 80}.holds(o.grams(lights)); }},
           {"6.M7",
            [=](const Offer& o) {
              return within(o, lights[0], {8.2, 9}) && within(o, lights[1], {8.2, 9}) &&
                     o.zone(lights[0]).result.planned.named.tone == T::beige;
            }},
           {"6.M8",
            [=](const Offer& o) {
              return o.none({C::lightener}) && o.strongest() < 6 && o.no_shade(lights, {9.5, 10}) &&
                     o.no_shade(lights, {1, 7}) && o.not_alone(lights, T::ash);
            }},
           {"6.M9", [](const Offer& o) { return o.says("after_toner_lasts") && lasts(o, {3, 6}); }}},
          {{"6.S1", [=](const Offer& o) { return o.colours(lights, {{}, {0, 2}, {}, {}, {}}); }},
           {"6.S3", [](const Offer& o) { return rebook(o, {4, 6}); }}},
          [=](Visit& v) {
            for (const auto& z : lights) {
              span_of(v, z).populations[0].level.value = 10;  // pale yellow, not toned yet
              span_of(v, z).populations[0].tone = T::gold;
              aim_for(v, z).level = 10;
            }
          },
          {{"6.M10", [=](const Offer& o) {
              return o.colours(
                  lights, {{C::demi}, {0, 3}, {}, {2, 6}, {10, 10}, {{T::violet, {0.01, 1}}}, {T::violet, T::beige}});
            }}}};
}

Case grown_out() {
  const std::string at_line = "lights/line", lengths = "lights/lengths";
  return {"07_grown_out_lights",
          {{"7.M1",
            [=](const Offer& o) {
              return o.nothing("between/all") && o.colours({at_line}, {{C::demi},
                                                                       {0, 3},
                                                                       {},
                                                                       {8, 20},
                                                                       {7, 8},
                                                                       {{T::natural, {0.5, 1}}},
                                                                       {T::natural, T::beige, T::ash}});
            }},
           {"7.M2",
            [=](const Offer& o) {
              return o.nothing(lengths) || o.colours({lengths}, {{C::demi},
                                                                 {0, 3},
                                                                 {},
                                                                 {3, 10},
                                                                 {9, 9},
                                                                 {{T::violet, {0, 0.3}}},
                                                                 {T::beige, T::violet, T::natural}});
            }},
           {"7.M3", [=](const Offer& o) { return o.nothing(lengths) || o.starts_before(at_line, lengths); }},
           {"7.M4",
            [=](const Offer& o) {
              return Bound{20, 50}.holds(o.grams({at_line})) &&
                     (o.nothing(lengths) || Bound{40, 95}.holds(o.grams({lengths})));
            }},
           {"7.M5",
            [=](const Offer& o) {
              return within(o, at_line, {6.9, 7.9}) && within(o, lengths, {8.4, 9.2}) &&
                     step(o, at_line, lengths) <= 1.9 && step(o, "lights/growth", at_line) <= 1.9;
            }},
           {"7.M6",
            [=](const Offer& o) {
              return o.none({C::lightener, C::permanent}) && o.strongest() < 6 && o.no_shade({at_line}, {1, 6.4}) &&
                     o.on(at_line) != o.on(lengths) && o.not_alone({at_line, lengths}, T::ash);
            }},
           {"7.M7", [](const Offer& o) { return o.says("after_shadow_fades") && lasts(o, {4, 8}); }}},
          {{"7.S2", [=](const Offer& o) { return o.strongest() <= 2; }},
           {"7.S3", [](const Offer& o) { return rebook(o, {6, 10}); }}},
          [](Visit& v) {
            Span& growth = span_of(v, "lights/growth");
            Population white = growth.populations[0];
            growth.populations[0].share = {0.6, 0.05};
            white.name = "white", white.kind = FibreKind::white, white.share = {0.4, 0.05};
            growth.populations.push_back(white);
            ZoneAim own;
            own.zone = "lights/growth", own.level = 6;
            v.aims.insert(v.aims.begin(), own);
          },
          {{"7.M8", [=](const Offer& o) {
              return o.colours({"lights/growth"},
                               {{C::permanent}, {6, 6}, {}, {35, 45}, {6, 6}, {{T::natural, {0.25, 0.55}}}}) &&
                     o.on("lights/growth") != o.on(at_line);
            }}}};
}

Case soft_light() {
  const std::string roots = "whole head/roots", lengths = "whole head/lengths", ends = "whole head/ends";
  const Zones all = {roots, lengths, ends};
  return {"08_seven_to_soft_light",
          {{"8.M1",
            [=](const Offer& o) {
              return o.colours(all, {{C::permanent},
                                     {6, 9},
                                     {1, 1.5},
                                     {},
                                     {8.5, 9.5},
                                     {{T::natural, {0, 0.4}}},
                                     {T::beige, T::gold, T::natural}}) &&
                     Bound{35, 45}.holds(o.minutes(lengths));
            }},
           {"8.M2",
            [=](const Offer& o) {
              return o.starts_before(lengths, roots) && Bound{10, 30}.holds(o.minutes(lengths) - o.minutes(roots)) &&
                     o.strongest_on(roots) <= 6 && !o.starts_before(ends, lengths);
            }},
           {"8.M3", [=](const Offer& o) { return Bound{90, 165}.holds(o.grams(all)); }},
           {"8.M4",
            [=](const Offer& o) {
              // Beige-gold lies where "natural" is the nearest single word.
              const ZoneResult& on = o.zone(lengths).result;
              const Tone tone = on.planned.named.tone;
              const bool warm = tone == T::beige || tone == T::gold ||
                                (tone == T::natural && on.landing && on.landing->tone_error <= 5);
              return within(o, lengths, {8, 8.9}) && warm && within(o, ends, {8, 9}) && step(o, roots, lengths) <= 0.5;
            }},
           {"8.M5",
            [=](const Offer& o) {
              return o.none({C::lightener}) && o.strongest() < 12 && o.not_alone(all, T::ash) &&
                     o.not_alone(all, T::violet) && o.minutes(roots) < o.minutes(lengths);
            }},
           {"8.M6", [](const Offer& o) { return o.says("after_warmth_stays") && line(o, {3, 5}); }}},
          {{"8.S1", [=](const Offer& o) { return o.strongest() <= 6; }},
           {"8.S4", [](const Offer& o) { return rebook(o, {5, 7}); }}},
          [=](Visit& v) {
            for (const auto& z : {lengths, ends}) span_of(v, z).populations[0].origin = ColourOrigin::tinted;
          },
          {{"8.M7", [=](const Offer& o) {
              return o.none_on({lengths, ends}, {C::permanent, C::high_lift, C::demi}) || (o.way && o.first(lengths));
            }}}};
}

}  // namespace

std::vector<Case> lighter_and_toned() { return {too_dark(), brassy_lights(), grown_out(), soft_light()}; }

}  // namespace strandline::cases
