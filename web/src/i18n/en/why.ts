import { n } from './count';

type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => (p[key] ?? '?').replace(/^(-?\d+)\.0$/, '$1');

/** Why a bowl, an order or a refusal is as it is. */
export const why = {
  // A bowl.
  'why.natural_share_for_white': (p: P) =>
    `${of(p, 'share')} % natural, so that ${of(p, 'white')} % white is covered and does not turn flat.`,
  'why.counter_tone': (p: P) =>
    `${of(p, 'product')}, ${of(p, 'share')} %, neutralises the warmth underneath.`,
  'why.developer_for_lift': (p: P) =>
    `${of(p, 'strength')} developer, as the target is ${n.levels(of(p, 'levels'))} lighter.`,
  'why.developer_for_white': (p: P) => `${of(p, 'strength')} developer, so that white hair takes.`,
  'why.developer_for_deposit': (p: P) =>
    `${of(p, 'strength')} developer: colour goes on, hardly anything lifts.`,
  'why.warmth_expected': (p: P) => `Going ${n.levels(of(p, 'levels'))} lighter shows warmth underneath.`,
  'why.deepen_at_basin': () =>
    'Unlikely to come out too dark. If it is too light at the basin, deepen it there with a demi a level darker.',
  'why.warming_tone': (p: P) =>
    `${of(p, 'product')}, ${of(p, 'share')} %, gives back the warmth that would be missing.`,
  'why.in_packets': (p: P) => `About ${n.packets(of(p, 'packets'))}, ${of(p, 'grams')} g in each.`,
  'why.beside_packets': () => 'Goes on between the packets while they develop; rinse all out together.',
  'why.one_bowl_serves': (p: P) => `One bowl serves ${n.zones(of(p, 'zones'))}.`,
  'why.own_bowl': () => 'This zone needs a bowl of its own.',
  'why.carries_tone': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, carries the target tone.`,
  'why.natural_ground': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, is the natural ground.`,
  'why.thins': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, thins the colour.`,
  'why.part_of_depth': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, sets the depth.`,
  'why.one_bowl_fewer': (p: P) =>
    `${n.bowls(of(p, 'bowls'))} would do, ${n.levels(of(p, 'worse'))} further from the target.`,
  'why.same_mix_later': (p: P) =>
    `The mix of bowl ${of(p, 'bowl')} goes on the lengths for the last ${n.minutes(of(p, 'minutes'))}.`,
  'why.fourth_shade_nearer': (p: P) =>
    `A fourth shade and finer grams bring it ${n.levels(of(p, 'levels'))} nearer; only steps from the best bowl of three shades in eighths were tried.`,
  'why.grams_nearer': (p: P) =>
    `Finer grams bring it ${n.levels(of(p, 'levels'))} nearer; only steps from the best bowl in eighths were tried.`,
  'why.regrowth_to_lengths': (p: P) =>
    `The lengths cannot follow, so the regrowth goes to them. As wished it would stand ${n.levels(of(p, 'levels'))} against them.`,
  'why.builds_up_on_lengths': (p: P) =>
    `Bowl ${of(p, 'bowl')} is not for the lengths too: they would come out ${n.levels(of(p, 'levels'))} too dark.`,
  'why.nothing_wished': () => 'Every zone stays as it is.',
  'why.no_bowl_may_serve': () => 'No bowl of this shelf may serve its zones, so it is not compared.',
  'why.comes_off_early': (p: P) =>
    `Bowl ${of(p, 'bowl')} on ${of(p, 'zone')}: the clock lets it work ${n.minutes(of(p, 'minutes'))}, not the ${of(p, 'planned')} that were asked for. A second colourist, fewer areas at a time or a fresh mix; the forecast counts what the clock allows.`,
  'why.stays_too_long': (p: P) =>
    `Bowl ${of(p, 'bowl')} on ${of(p, 'zone')}: it stays ${n.minutes(of(p, 'minutes'))} after the last touch; its range allows ${of(p, 'longest')}. A second colourist, fewer areas at a time, or this zone later.`,
  'why.leave_as_it_is': () => 'It stays as it is: nothing on the shelf brings it nearer.',
  // What cannot be had.
  'why.colour_does_not_lift_colour': () =>
    'Colour does not lift colour: what is tinted is cleaned or lightened first.',
  'why.lift_limit': () => 'That is more lift than this shelf gives on this hair in one go.',
  'why.depth_out_of_reach': () => 'No shade on this shelf goes that deep here.',
  'why.needs_filler': () => 'Lightened hair taken this much darker needs filling first, or it goes flat.',
  'why.warmth_stays': () => 'The warmth that lifting shows cannot be neutralised fully.',
  'why.tone_between_words': () => 'The tone comes close, not all the way.',
  'why.tone_out_of_reach': () => 'The tone cannot be met with these shades.',
  'why.white_cover': (p: P) =>
    `White stays ${n.levels(of(p, 'levels'))} lighter than the rest and would show.`,
  'why.base_too_dark_for_high_lift': () => 'High-lift colour needs a lighter natural level than this.',
  'why.high_lift_on_coloured': () =>
    'High-lift colour is for natural hair, not for tinted or lightened hair.',
  'why.lightened_is_toned': () =>
    'Lightened hair is toned with a weak developer, not lifted again by a tint.',
  'why.condition_spent': () =>
    'This hair should not be lightened further today. Treat it, and plan another visit.',
  'why.minerals_first': () =>
    'Minerals from water lie in this hair: take them off with a chelating treatment before any peroxide.',
  'why.metal_test_first': () => 'The history may hold metal: a metal test comes before any peroxide.',
  'why.range_not_on_scalp': () => 'One range is left out: it may not touch the scalp.',
  'why.straightened_lately': () => 'This hair was straightened recently: stronger developers are left out.',
  'why.failed_stretch': () =>
    'The wet stretch failed: no lightener, no high-lift, nothing of 6 % or more there.',
  'why.law': () => 'A legal limit rules it out.',
  // Where the doubt of a prediction comes from.
  'why.doubt_from_level_reading': (p: P) =>
    `${of(p, 'percent')} % of the uncertainty in depth is the level that was read.`,
  'why.doubt_from_white_share': (p: P) =>
    `${of(p, 'percent')} % of the uncertainty in depth is the white share.`,
  'why.doubt_from_porosity': (p: P) => `${of(p, 'percent')} % of the uncertainty in depth is the porosity.`,
  'why.doubt_from_white_look': (p: P) =>
    `${of(p, 'percent')} % of the uncertainty in depth is the colour of white hair, which was never measured here.`,
  'why.doubt_from_lightening': (p: P) =>
    `${of(p, 'percent')} % of the uncertainty in depth is how fast this head lightens: a strand test tells.`,
  'why.doubt_from_uptake': (p: P) =>
    `${of(p, 'percent')} % of the uncertainty in depth is how much colour this hair takes: a strand test tells.`,
  'why.doubt_from_blend': (p: P) =>
    `${of(p, 'percent')} % of the uncertainty in depth is how white and pigmented fibres look together.`,
  'why.doubt_from_shade_name': (p: P) =>
    `${of(p, 'percent')} % of the uncertainty in depth is what a shade known by its name alone gives: a swatch tells.`,
  // What to point at before mixing.
  'why.finding_dark_band': (p: P) =>
    `${of(p, 'zone')}: a band ${n.levels(of(p, 'levels'))} darker than both sides. Give it a bowl of its own; rather lighter today, deepen later.`,
  'why.finding_light_band': (p: P) =>
    `${of(p, 'zone')}: a band ${n.levels(of(p, 'levels'))} lighter than both sides. Deepen it by itself.`,
  'why.finding_hot_regrowth': (p: P) =>
    `${of(p, 'zone')}: coloured regrowth ${n.levels(of(p, 'levels'))} lighter than the lengths. Deepen it with their shade and a weak developer.`,
  'why.finding_uneven_ends': (p: P) =>
    `${of(p, 'zone')}: ends ${n.levels(of(p, 'levels'))} apart from the lengths. Give them a bowl or a time of their own.`,
  'why.finding_green': (p: P) =>
    `${of(p, 'zone')}: it looks green. Rule out minerals and metal first; then a little red or copper neutralises it.`,
  // Ways over more than one step.
  'why.later_bowl_decides': () => 'A later step follows here: what counts is the bowl after it.',
  'why.route_chelate': (p: P) => `Take the minerals off: ${n.minutes(of(p, 'minutes'))}, then rinse well.`,
  'why.route_soften': (p: P) =>
    `Soften the resistant white: ${of(p, 'strength')}, ${n.minutes(of(p, 'minutes'))}.`,
  'why.route_fill': () => 'Fill, so that the depth has a warm base.',
  'why.route_remove': (p: P) =>
    `Take the old colour off: ${n.minutes(of(p, 'minutes'))}, then rinse as long as the maker says.`,
  'why.route_lighten': (p: P) =>
    `Lighten with ${of(p, 'strength')}, up to ${n.minutes(of(p, 'minutes'))}. Look every few minutes; stop on pain, heat or stretching hair.`,
  'why.route_needs_visits': (p: P) =>
    `It takes ${n.visits(of(p, 'visits'))}, ${n.weeks(of(p, 'weeks'))} or more apart. Check the hair before each.`,
  'why.route_stays_short': () => 'Even so the target is not quite reached.',
  'why.route_strand_first': () => 'More than one step adds uncertainty: try the whole way on a strand first.',
  // A second look.
  'why.change_strength': (p: P) => `Use ${of(p, 'strength')} developer.`,
  'why.change_ratio': (p: P) => `Mix 1 to ${of(p, 'ratio')}.`,
  'why.change_minutes': (p: P) => `Leave it for ${n.minutes(of(p, 'minutes'))}.`,
  'why.swap_shade': (p: P) => `Use ${of(p, 'by')} instead of ${of(p, 'product')}.`,
  'why.add_shade': (p: P) => `Add ${of(p, 'share')} % ${of(p, 'product')}.`,
  'why.drop_shade': (p: P) => `Leave out ${of(p, 'product')}.`,
  'why.shift_shares': (p: P) => `Use more ${of(p, 'product')}: ${of(p, 'share')} % of the colour.`,
  'why.finish_with': (p: P) => `Finish what is weighed with ${of(p, 'grams')} g ${of(p, 'product')}.`,
  'why.weighed_is_lost': (p: P) =>
    `Bowl ${of(p, 'bowl')}: what is weighed (${of(p, 'grams')} g of it) cannot be finished well. Begin it again.`,
  'why.another_bowl': () => 'Another bowl comes nearer than any change of this one.',
  'why.rule_limit': () => 'A limit of the rules for this hair keeps it away.',
  'why.stopped_by_rules': () => 'A rule stops this visit: nothing is mixed today as asked.',
  'why.bowls_stopped_by_rules': () => 'A bowl breaks a rule: no forecast is made for it.',
  'why.left_out_for_condition': () => 'A bowl is left out: by this clock it would cost the hair too much.',
  'why.other_maker_skin_test': () =>
    'Another maker’s colour: a new skin test is due first, as the maker says.',
  'why.nothing_may_replace': () => 'Nothing on the shelf may take its place on this hair.',
  'why.scalp_lightener_strength': () => 'A lightener of this strength may not touch the scalp.',
  // The order of work.
  'why.packets_first': () => 'Packets first: what goes between them follows.',
  'why.whitest_first': () => 'Whitest hair first: it needs the longest.',
  'why.resistant_first': () => 'Resistant white first: it needs the longest.',
  'why.after_the_whiter': () => 'After the whiter areas.',
  'why.areas_of_the_house': () => 'In this house’s order of areas.',
  'why.hairline_last': () => 'The hairline last.',
  'why.parting_by_parting': () => 'Parting by parting.',
  'why.needs_longest': (p: P) => `What needs longest first: ${of(p, 'minutes')} minutes.`,
  'why.needs_less': (p: P) => `Later, as ${of(p, 'minutes')} minutes are enough: ${of(p, 'zones')}.`,
  'why.porous_last': () => 'The more porous hair later: it takes faster.',
  'why.time_is_over': () => 'Its time is over.',
  'why.away_from_scalp_first': () => 'Away from the scalp first: the scalp’s warmth speeds lifting up.',
  'why.scalp_zone_later': () => 'The scalp zone later: the scalp’s warmth speeds lifting up.',
  'why.porous_ends_last': () => 'Porous ends last: they take fastest.',
  'why.lengths_after_regrowth': () => 'Lengths after the regrowth.',
  'why.small_mix': () => 'A small fresh mix: the first would be too old.',
  'why.one_basin_time': () => 'Everything on the scalp leaves together.',
  // After the visit.
  'why.after_line_shows': (p: P) =>
    `New growth shows a line after ${of(p, 'from')} to ${of(p, 'until')} weeks.`,
  'why.after_short_hair_grows_out': (p: P) =>
    `Hair this short has grown out after ${of(p, 'from')} to ${of(p, 'until')} weeks.`,
  'why.after_fades_softly': (p: P) => `It fades softly within ${of(p, 'from')} to ${of(p, 'until')} weeks.`,
  'why.after_blended_not_covered': (p: P) =>
    `White is blended, not covered; it fades softly within ${of(p, 'from')} to ${of(p, 'until')} weeks.`,
  'why.after_red_fades_first': (p: P) =>
    `Red fades first: refresh it after ${of(p, 'from')} to ${of(p, 'until')} weeks.`,
  'why.after_copper_fades': (p: P) =>
    `Copper fades: a demi after ${of(p, 'from')} to ${of(p, 'until')} weeks.`,
  'why.after_toner_lasts': (p: P) =>
    `A toner lasts ${of(p, 'from')} to ${of(p, 'until')} weeks, not for good.`,
  'why.after_shadow_fades': (p: P) =>
    `The shadow fades within ${of(p, 'from')} to ${of(p, 'until')} weeks, and turns warm.`,
  'why.after_direct_fades': (p: P) =>
    `Direct colour fades over eight to ten washes, ${of(p, 'from')} to ${of(p, 'until')} weeks.`,
  'why.after_direct_stains': () => 'It stains linen and skin, and is hard to take out again.',
  'why.after_ends_take_and_fade': () => 'Porous ends take more at once and fade first.',
  'why.after_lighter_needs_more': () => 'Going lighter again will need a remover or lights.',
  'why.after_growth_may_glow': () => 'The new growth may look brighter than the lengths.',
  'why.after_warmth_shows': () => 'Warmth will show where old colour comes out.',
  'why.after_darkens_back': () => 'It may darken again within days.',
  'why.after_half_way_is_good': () => 'Half way there is a good result today.',
  'why.after_warmth_stays': () => 'Some warmth stays: colour alone lifts warm.',
  'why.after_curl_may_loosen': () => 'The curl may loosen a little.',
  'why.after_no_more_home_colour': () => 'No more home colour until this is done.',
  'why.after_metal_comes_back': () =>
    'Metal in the water comes back: wet the hair first and wear a cap, and take it off with a chelating wash every week or two.',
  'why.after_violet_on_yellow_dulls': () =>
    'Pure violet on yellow hair turns dull: red-violet, or lighter first.',
  'why.after_wash_and_wait': () =>
    'Only a little too dark, and fresh: clarifying washes, and look again in one to two weeks.',
  'why.after_signs_wash_off': () =>
    'Itch, redness or swelling at the test spot or anywhere: wash it off and get medical help. It may come days later.',
};
