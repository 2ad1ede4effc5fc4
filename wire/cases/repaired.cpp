#include "case.h"

namespace strandline::cases {
namespace {

using T = Tone;

Case two_bands() {
  const std::string growth = "whole head/growth", bright = "whole head/bright band", dark = "whole head/dark band",
                    lengths = "whole head/lengths";
  return {"12_home_colour_two_bands",
          {{"12.M1",
            [=](const Offer& o) { return o.nothing(growth) || o.colours({growth}, {{C::demi}, {}, {}, {}, {5, 5}}); }},
           {"12.M2",
            [=](const Offer& o) {
              const PlannedBowl* b = o.first(dark);
              return b && b->bowl.zones.size() == 1 && o.looks() &&
                     (o.opens({dark}, {{C::remover}, {}, {}, {10, 20}, {}}) ||
                      o.opens({dark}, {{C::lightener}, {0, 6}, {}, {0, 30}, {}}));
            }},
           {"12.M3",
            [=](const Offer& o) {
              return o.colours({bright},
                               {{C::demi}, {0, 3}, {}, {5, 20}, {5, 5}, {{T::natural, {0.5, 1}}, {T::ash, {0, 0.35}}}});
            }},
           {"12.M4",
            [=](const Offer& o) {
              const auto even = [&](const std::string& z) {
                return o.nothing(z) || o.on(z) == o.first(z) ||
                       o.colours(
                           {z}, {{C::demi}, {0, 3}, {}, {5, 15}, {5, 6}, {{T::gold, {0, 0.4}}}, {T::natural, T::gold}});
              };
              return even(lengths) && even(dark);
            }},
           {"12.M5",
            [=](const Offer& o) {
              return Bound{15, 50}.holds(o.grams_of(C::remover)) && Bound{20, 130}.holds(o.grams_of(C::demi));
            }},
           {"12.M6",
            [=](const Offer& o) {
              return within(o, bright, {4.6, 5.6}) && within(o, dark, {4.2, 5.3}) && within(o, lengths, {4.6, 5.4});
            }},
           {"12.M7",
            [=](const Offer& o) {
              return o.none_on({bright, dark, lengths}, {C::permanent}) && o.no_shade({dark}, {6, 10}) &&
                     o.strongest() < 9 && !o.share_bowl({growth, bright, dark, lengths});
            }},
           {"12.M8",
            [](const Offer& o) {
              return o.says("after_warmth_shows") && o.says("after_no_more_home_colour") &&
                     o.plan.after.visits_from == 1 && o.plan.after.visits_until == 3;
            }}},
          {{"12.S1", [](const Offer& o) { return o.says("route_strand_first"); }},
           {"12.S3", [](const Offer& o) { return rebook(o, {2, 4}); }}},
          [](Visit& v) {
            for (Span& s : v.head.areas[0].spans)
              for (Population& p : s.populations)
                if (p.kind == FibreKind::pigmented) p.level.value = 5, p.tone = T::natural;
          },
          {{"12.M9",
            [=](const Offer& o) { return o.none({C::remover, C::lightener, C::permanent}) && o.nothing(growth); }}}};
}

Case earlier_reaction() {
  const std::string regrowth = "whole head/regrowth";
  return {"13_earlier_reaction",
          {{"13.M1", [](const Offer& o) { return o.stopped(); }},
           {"13.M2",
            [](const Offer& o) {
              Visit told = o.visit;
              told.answers.doctor_agrees = YesNo::yes;
              told.answers.guardian_signed = YesNo::yes;
              return verdicts(told).go == Go::stopped;
            }},
           {"13.M3",
            [](const Offer& o) {
              Visit clear = o.visit;
              clear.test.result = TestResult::clear;
              clear.skin_test = "2026-03-06", clear.test.read = "2026-03-08";
              return o.says("react.colour") && verdicts(clear).go == Go::stopped;
            }},
           {"13.M4", [](const Offer& o) { return o.says("doctor_first"); }},
           {"13.M5", [](const Offer& o) { return o.none({C::demi, C::permanent, C::direct, C::high_lift}); }},
           {"13.M6", [](const Offer& o) { return o.says("after_signs_wash_off"); }}},
          {{"13.S2", [](const Offer& o) { return o.says("cut_style"); }}},
          [](Visit& v) { v.answers.reaction = ColourReaction::none; },
          {{"13.M7",
            [=](const Offer& o) {
              if (!o.stopped() || !o.says("test.lead")) return false;
              Visit later = o.visit;
              later.test.result = TestResult::clear;
              later.date = "2026-03-10", later.test.read = "2026-03-10";
              FormulateOptions options;
              options.scenarios = 24;
              const auto then = strandline::plan(later, options);
              if (!then) return false;
              const Offer open(later, *then);
              return open.colours({regrowth},
                                  {{C::permanent}, {6, 6}, {}, {35, 45}, {5, 5}, {{T::natural, {0.25, 0.5}}}}) &&
                     Bound{35, 75}.holds(open.grams({regrowth}));
            }},
           {"13.M8", [](const Offer& o) {
              Visit tattoo = o.visit;
              tattoo.answers.tattoo = TattooReaction::reaction;
              return verdicts(tattoo).go == Go::stopped;
            }}}};
}

Case pool_green() {
  const std::string growth = "whole head/growth", mids = "whole head/mids", ends = "whole head/ends";
  const std::vector<T> warm = {T::beige, T::gold, T::copper, T::natural, T::red};
  return {
      "14_pool_green",
      {{"14.M1", [=](const Offer& o) { return o.opens({ends}, {{C::pre_treatment}, {0, 0}, {}, {5, 15}, {}}); }},
       {"14.M2", [](const Offer& o) { return o.looks(); }},
       {"14.M3",
        [=](const Offer& o) {
          return o.nothing(ends) || o.on(ends) == o.first(ends) ||
                 o.colours({ends}, {{C::demi}, {0, 3}, {}, {2, 8}, {8.5, 9.5}, {{T::red, {0, 0.1}}}, warm});
        }},
       {"14.M4", [=](const Offer& o) { return o.nothing(growth) && o.minutes(mids) <= 3; }},
       {"14.M5", [](const Offer& o) { return Bound{35, 100}.holds(o.grams_of(C::pre_treatment)); }},
       {"14.M6",
        [=](const Offer& o) {
          return within(o, ends, {8.4, 9.4}) && o.zone(ends).result.planned.lab.a >= -1 && step(o, mids, ends) <= 0.5;
        }},
       {"14.M7",
        [=](const Offer& o) {
          return o.none({C::lightener, C::permanent}) && o.strongest() < 6 && !o.steps.empty() &&
                 std::all_of(
                     o.steps[0].begin(), o.steps[0].end(),
                     [](const PlannedBowl& b) { return b.on_head_peroxide_percent <= 0; }) &&
                 (o.nothing(ends) ||
                  o.share(*o.on(ends), T::ash) + o.share(*o.on(ends), T::violet) + o.share(*o.on(ends), T::green) <= 0);
        }},
       {"14.M8", [](const Offer& o) { return o.says("after_metal_comes_back"); }}},
      {{"14.S3", [](const Offer& o) { return rebook(o, {4, 8}); }}},
      [=](Visit& v) {
        for (const auto& z : {mids, ends}) {
          ZoneAim& own = aim_for(v, z);
          own.level = 6, own.tone = T::natural, own.second_tone.reset();
        }
      },
      {{"14.M9", [=](const Offer& o) {
          return o.steps.size() == 3 && o.opens({ends}, {{C::pre_treatment}, {0, 0}, {}, {}, {}}) &&
                 std::any_of(o.steps[1].begin(), o.steps[1].end(),
                             [&](const PlannedBowl& b) {
                               const Range* range = find_range(o.visit.shelf, b.bowl.formula.range);
                               return range->cls == C::filler && Bound{10, 20}.holds(b.bowl.formula.minutes);
                             }) &&
                 o.colours({ends}, {{C::demi}, {0, 3}, {}, {}, {6, 6}});
        }}}};
}

}  // namespace

std::vector<Case> repaired() { return {two_bands(), earlier_reaction(), pool_green()}; }

}  // namespace strandline::cases
