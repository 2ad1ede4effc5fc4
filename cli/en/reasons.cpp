#include <array>

#include "en/sentences.h"

namespace strandline::cli::en {

namespace {

constexpr std::array sentences{
    // Notes on the reading.
    Sentence{"read_on_dry_hair",
             "Read level and white share on dry hair with the salon's own swatches; between two levels, take "
             "the darker.",
             ""},
    Sentence{"history_unknown_test_first", "{zone}: history unknown.",
             "Do a metal and a strand test before any peroxide."},
    Sentence{"extension_strand_first", "{zone}: other hair with a bond; nothing is claimed for it.",
             "Try a strand first."},
    Sentence{"failed_stretch", "[{zone}: ]the wet stretch failed.",
             "No lightener, no high-lift and nothing of 6 % or more there."},
    // What to point at before mixing.
    Sentence{"finding_dark_band", "{zone}: a band {levels} levels darker than the hair on both sides.",
             "Give it a bowl of its own, or take the colour off there first; rather lighter today, deepen later."},
    Sentence{"finding_light_band", "{zone}: a band {levels} levels lighter than the hair on both sides.",
             "Deepen it by itself, to the neighbours' depth."},
    Sentence{"finding_hot_regrowth", "{zone}: coloured regrowth {levels} levels lighter than the lengths.",
             "Deepen the regrowth with the lengths' own shade; the scalp's warmth lifts, so keep the developer weak."},
    Sentence{"finding_uneven_ends", "{zone}: ends {levels} levels apart from the lengths before them.",
             "Give the ends a bowl or a time of their own."},
    Sentence{"finding_green", "{zone}: it looks green.",
             "Rule out minerals and metal first; then a little red or copper takes the green back."},
    // Where the doubt of a prediction comes from.
    Sentence{"doubt_from_level_reading", "{percent} % of the doubt about its depth is the level that was read.", ""},
    Sentence{"doubt_from_white_share", "{percent} % of the doubt about its depth is the white share.", ""},
    Sentence{"doubt_from_porosity", "{percent} % of the doubt about its depth is the porosity.", ""},
    Sentence{"doubt_from_white_look",
             "{percent} % of the doubt about its depth is the colour of white hair, which was never measured here.",
             ""},
    Sentence{"doubt_from_lightening",
             "{percent} % of the doubt about its depth is how fast this head lightens: a strand test tells.", ""},
    Sentence{"doubt_from_uptake",
             "{percent} % of the doubt about its depth is how much colour this hair takes: a strand test tells.", ""},
    Sentence{"doubt_from_blend",
             "{percent} % of the doubt about its depth is how white and pigmented fibres look together.", ""},
    // Limits that keep a bowl away.
    Sentence{"base_too_dark_for_high_lift", "High-lift colour needs a lighter natural level than this.", ""},
    Sentence{"high_lift_on_coloured", "High-lift colour is for natural hair, not for tinted or lightened hair.", ""},
    Sentence{"lightened_is_toned", "Lightened hair is toned with a weak developer, not lifted again by a tint.", ""},
    Sentence{"condition_spent", "The hair has no condition left for more lightening.",
             "Treat it, and plan another visit."},
    Sentence{"metal_test_first", "The history here may hold metal.", "Do a metal test before any peroxide."},
    Sentence{"range_not_on_scalp", "This range may not touch the scalp.", ""},
    Sentence{"straightened_lately", "This hair was straightened lately.",
             "Stay at the strength that the house allows for it."},
    Sentence{"ceiling", "{rule}", ""},
    Sentence{"left_out_for_stock", "Left out because the shelf holds only {grams} g[: {product}].", ""},
    Sentence{"stock_short", "The shelf does not hold enough {product}.", "Receive more, or plan with another shade."},
    Sentence{"percentages_unknown",
             "[Bowl {bowl}: ]not every regulated percentage is declared, so the limits cannot be checked.",
             "Ask the maker."},
    Sentence{"no_range_usable", "No range of the shelf may be used on this hair today.",
             "See the reasons beside each zone; test or treat first."},
    // Why a bowl is as it is.
    Sentence{"natural_share_for_white",
             "{share} % natural shade, because {white} % of these fibres are white and need its depth.", ""},
    Sentence{"counter_tone", "{share} % {product} works against the warmth that shows.", ""},
    Sentence{"developer_for_lift",
             "Developer {percent} %, as the wish is {levels} levels lighter[ ({in_bowl} % on the head)].", ""},
    Sentence{"developer_for_white", "Developer {percent} %, so that white hair takes[ ({in_bowl} % on the head)].", ""},
    Sentence{"developer_for_deposit",
             "Developer {percent} %: colour goes on, hardly any lift is needed[ ({in_bowl} % on the head)].", ""},
    Sentence{"warmth_expected", "Going {levels} levels lighter shows the hair's own warmth.", ""},
    Sentence{"one_bowl_serves", "One bowl serves {zones} zones.", ""},
    Sentence{"own_bowl", "This zone needs its own bowl.", ""},
    Sentence{"one_bowl_fewer", "With {bowls} bowls the result would be {worse} levels worse.", ""},
    Sentence{"same_mix_later", "The mix of bowl {bowl} goes on the lengths for the last {minutes} minutes.",
             "Weigh it fresh where the first is too old by then."},
    Sentence{
        "builds_up_on_lengths",
        "Bowl {bowl} is not for the lengths too, not even for a few minutes: they would come out {levels} levels too "
        "dark.",
        ""},
    Sentence{"leave_as_it_is", "It is left as it is: nothing on the shelf brings it nearer.", ""},
    // Why a wish stays out of reach.
    Sentence{"colour_does_not_lift_colour", "Colour does not lift colour: asked {asked}, reached {reached}.",
             "A remover or a lightener would come first, after a strand test."},
    Sentence{"lift_limit", "More lift than this shelf gives today: asked {asked}, reached {reached}.",
             "Go in steps over several visits."},
    Sentence{"depth_out_of_reach", "It stays lighter than asked: {asked} wanted, {reached} reached.", ""},
    Sentence{"needs_filler", "Lightened hair lacks the warm ground for this depth.", "Fill first."},
    Sentence{"warmth_stays", "The hair's own warmth stays: {reached_tone} instead of {asked_tone}.",
             "Tone in a second step."},
    Sentence{"tone_between_words", "It comes out {reached_tone}, yet less so than was asked.", ""},
    Sentence{"tone_out_of_reach", "The tone stays {reached_tone} instead of {asked_tone}.", ""},
    Sentence{"white_cover", "White fibres still differ by {levels} levels from their neighbours.",
             "Longer at full time, or soften the white first."},
    // Ways over more than one step.
    Sentence{"route_soften", "Soften the resistant white first[: {percent} %, {minutes} minutes].",
             "Follow the maker's instructions; protect skin and eyes."},
    Sentence{"route_fill", "Fill first, so that the depth has a warm ground[: {minutes} minutes].", ""},
    Sentence{"route_remove", "Take the old colour off first[: {minutes} minutes].",
             "Rinse as long as the maker says; colour comes back where it was not rinsed well."},
    Sentence{"route_lighten", "Lighten first[: {percent} %, up to {minutes} minutes from the first touch].",
             "Test a strand. Look every few minutes; stop at once on pain, heat or stretching hair."},
    Sentence{"route_needs_visits", "This takes {visits} visits, {weeks} weeks or more apart.",
             "Check the hair before each; stop where its condition says so."},
    Sentence{"route_stays_short", "Even so the wish is not quite reached.", ""},
    Sentence{"route_strand_first", "More than one step adds doubt.", "Try the whole way on a strand first."},
    // A colourist's own bowl, looked at again.
    Sentence{"change_strength", "Take developer {percent} %.", ""},
    Sentence{"change_ratio", "Mix 1 to {ratio}.", ""},
    Sentence{"change_minutes", "Leave it for {minutes} minutes.", ""},
    Sentence{"swap_shade", "Take {by} instead of {product}.", ""},
    Sentence{"add_shade", "Add {share} % {product}.", ""},
    Sentence{"drop_shade", "Leave out {product}.", ""},
    Sentence{"shift_shares", "Take more of {product}: {share} % of the colour.", ""},
    Sentence{"another_bowl", "Another bowl comes nearer than any change of this one.", ""},
    Sentence{"other_maker_skin_test", "Another maker's colour.",
             "A new skin test is due, as the maker says, before it touches this client."},
    Sentence{"nothing_may_replace", "Nothing on the shelf may take its place on this hair.", ""},
    Sentence{"scalp_lightener_strength", "A lightener of this strength may not touch the scalp.", ""},
    // Order of application.
    Sentence{"whitest_first", "whitest first: it needs the longest", ""},
    Sentence{"resistant_first", "resistant white first", ""},
    Sentence{"crown_to_nape_then_sides", "crown to nape, then the sides", ""},
    Sentence{"hairline_last", "hairline last, with its own fresh mix where it needs one", ""},
    Sentence{"scalp_zone_later", "away from the scalp first: the scalp's warmth speeds it up", ""},
    Sentence{"away_from_scalp_first", "away from the scalp first", ""},
    Sentence{"back_before_front", "back before front when lightening", ""},
    Sentence{"lengths_after_regrowth", "lengths after the regrowth", ""},
    Sentence{"porous_ends_last", "porous ends last: they take fastest", ""},
    // Other tasks of the clock.
    Sentence{"before_the_first_touch", "before the first touch", ""},
    Sentence{"fresh_for_first_use", "mixed fresh for its first use", ""},
    Sentence{"small_mix", "a small fresh mix: the first would be too old", ""},
    Sentence{"packet_reaches_its_time", "this packet reaches its time", ""},
    Sentence{"one_basin_time", "everything on the scalp leaves together", ""},
    Sentence{"after_the_basin", "after the basin", ""},
    Sentence{"first_look", "first look at the lightener", ""},
    Sentence{"next_look", "next look at the lightener", ""},
};

}  // namespace

std::span<const Sentence> reason_sentences() { return sentences; }

}  // namespace strandline::cli::en
