#include "case.h"

namespace strandline::cases {
namespace {

using T = Tone;

Case short_and_permed() {
  const std::string top = "top/all", sides = "sides/all";
  return {
      "09_short_and_permed",
      {{"9.M1",
        [=](const Offer& o) {
          return o.colours({top, sides}, {{C::demi}, {0, 3}, {1, 2}, {}, {}}) ||
                 o.colours({top, sides}, {{C::permanent}, {3, 3}, {1, 2}, {}, {}});
        }},
       {"9.M2",
        [=](const Offer& o) {
          const std::vector<T> quiet = {T::natural, T::gold, T::beige};
          return o.colours({sides}, {{}, {}, {}, {}, {5, 5}, {{T::natural, {0.4, 1}}}, quiet}) &&
                 ((o.share_bowl({sides, top}) && Bound{5, 10}.holds(o.minutes(sides) - o.minutes(top))) ||
                  (o.on(top) != o.on(sides) && o.colours({top}, {{}, {}, {}, {}, {5.5, 6}, {}, quiet})));
        }},
       {"9.M3",
        [=](const Offer& o) { return Bound{12, 20}.holds(o.minutes(sides)) && Bound{5, 15}.holds(o.minutes(top)); }},
       {"9.M4", [=](const Offer& o) { return o.starts_before(sides, top); }},
       {"9.M5", [=](const Offer& o) { return Bound{35, 80}.holds(o.grams({top, sides})); }},
       {"9.M6",
        [=](const Offer& o) {
          return within(o, top, {4.5, 5.5}) && within(o, sides, {4.5, 5.5}) && step(o, top, sides) <= 0.5;
        }},
       {"9.M7", [](const Offer& o) { return o.strongest() < 6 && o.none({C::lightener, C::high_lift}); }},
       {"9.M8",
        [](const Offer& o) {
          return o.says("after_curl_may_loosen") && o.says("after_short_hair_grows_out") && line(o, {2, 4});
        }}},
      {{"9.S1", [=](const Offer& o) { return o.colours({top, sides}, {{}, {0, 1.5}, {1, 1}, {}, {}}); }},
       {"9.S3", [](const Offer& o) { return rebook(o, {3, 4}); }}},
      [](Visit& v) {
        v.aims.clear();
        ZoneAim tips, rest;
        tips.zone = "top/all", tips.level = 8, tips.tone = T::beige;
        rest.zone = "*", rest.leave = true;
        v.aims = {tips, rest};
      },
      {{"9.M9", [=](const Offer& o) { return o.none({C::lightener, C::high_lift}) && o.nothing(top); }}}};
}

Case clear_violet() {
  const std::string lengths = "whole head/lengths", ends = "whole head/ends";
  return {"10_violet_on_clean_light",
          {{"10.M1",
            [=](const Offer& o) {
              return o.colours({lengths, ends}, {{C::direct}, {0, 0}, {}, {}, {}, {{T::violet, {0.7, 1}}}, {}});
            }},
           {"10.M2", [=](const Offer& o) { return o.colours({lengths}, {{}, {}, {}, {15, 35}, {}}); }},
           {"10.M3", [=](const Offer& o) { return o.starts_before(lengths, ends); }},
           {"10.M4", [=](const Offer& o) { return Bound{60, 130}.holds(o.grams({lengths, ends})); }},
           {"10.M5",
            [=](const Offer& o) {
              return o.zone(lengths).result.planned.named.tone == T::violet && within(o, lengths, {5, 8.5}) &&
                     step(o, lengths, ends) <= 0.5;
            }},
           {"10.M6", [](const Offer& o) { return o.none({C::permanent, C::lightener}) && o.strongest() <= 0; }},
           {"10.M7", [](const Offer& o) { return o.says("after_direct_fades") && o.says("after_direct_stains"); }}},
          {{"10.S2", [](const Offer& o) { return rebook(o, {3, 5}); }}},
          [](Visit& v) {
            for (Span& s : v.head.areas[0].spans) s.populations[0].level.value = 8, s.populations[0].tone = T::gold;
          },
          {{"10.M8", [=](const Offer& o) {
              return o.says("after_violet_on_yellow_dulls") &&
                     (o.nothing(lengths) || o.share(*o.on(lengths), T::violet) < 1);
            }}}};
}

Case copper_on_white() {
  const Zones hairline = {"hairline/lengths", "hairline/ends"}, head = {"head/lengths", "head/ends"};
  const Zones all = {"hairline/lengths", "head/lengths", "hairline/ends", "head/ends"};
  return {
      "11_copper_on_white",
      {{"11.M1", [=](const Offer& o) { return o.colours(all, {{C::permanent}, {6, 6}, {1, 1.5}, {35, 45}, {}}); }},
       {"11.M2",
        [=](const Offer& o) {
          return std::all_of(all.begin(), all.end(), [&](const auto& z) {
            const PlannedBowl* b = o.on(z);
            return b && o.colours({z}, {{}, {}, {}, {}, {7, 8}, {{T::copper, {0.3, 0.6}}, {T::natural, {0.2, 1}}}}) &&
                   Bound{0.4, 0.7}.holds(o.share(*b, T::natural) + o.share(*b, T::gold));
          });
        }},
       {"11.M3",
        [=](const Offer& o) {
          if (!o.on(head[0]) || !o.on(hairline[0])) return false;
          const double more = o.share(*o.on(hairline[0]), T::natural) - o.share(*o.on(head[0]), T::natural);
          return o.share_bowl(all) || Bound{0, 0.25}.holds(more);
        }},
       {"11.M4",
        [=](const Offer& o) {
          return o.starts_before(hairline[0], head[0]) &&
                 (o.share_bowl({head[0], head[1]}) || o.starts_before(head[0], head[1]));
        }},
       {"11.M5", [=](const Offer& o) { return Bound{85, 145}.holds(o.grams(all)); }},
       {"11.M6",
        [=](const Offer& o) {
          return std::all_of(all.begin(), all.end(), [&](const auto& z) {
            // Soft copper lies where "natural" or "gold" may be the nearest single word.
            const ZoneResult& on = o.zone(z).result;
            const bool copper = on.planned.named.tone == T::copper || (on.landing && on.landing->tone_error <= 5);
            return within(o, z, {6.8, 7.9}) && copper && step(o, z, head[0]) <= 0.5;
          });
        }},
       {"11.M7",
        [=](const Offer& o) {
          return o.none({C::demi, C::high_lift}) && o.strongest() < 9 && o.no_shade(all, {9, 10}) &&
                 o.not_alone(all, T::copper) && o.not_alone(all, T::red) &&
                 o.colours(all, {{}, {}, {}, {}, {}, {{T::ash, {0, 0}}, {T::natural, {0.01, 1}}}});
        }},
       {"11.M8", [](const Offer& o) { return line(o, {1, 3}) && o.says("after_copper_fades") && lasts(o, {3, 5}); }}},
      {{"11.S2", [](const Offer& o) { return rebook(o, {3, 5}); }}},
      [](Visit& v) {
        for (Area& a : v.head.areas)
          for (Span& s : a.spans) {
            s.populations[0] = {"pigmented", FibreKind::pigmented, {1, 0}, {7, 0.35}};
            s.resistance = 0;
          }
      },
      {{"11.M9", [=](const Offer& o) {
          return o.colours({"head/lengths"},
                           {{C::permanent}, {3, 6}, {}, {}, {}, {{T::copper, {0.55, 1}}, {T::natural, {0, 0.35}}}});
        }}}};
}

}  // namespace

std::vector<Case> bright_and_white() { return {short_and_permed(), clear_violet(), copper_on_white()}; }

}  // namespace strandline::cases
