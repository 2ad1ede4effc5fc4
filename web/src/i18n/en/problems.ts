import { n } from './count';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** What is wrong, and what to do, for every code that can reach a screen. */
export const problems = {
  'problem.unknown': (code: string) => `Something is not right here (${code}). Please report this word.`,
  'problem.out_of_range': (p: P) => `${of(p, 'value')} is not possible: ${of(p, 'min')} to ${of(p, 'max')}.`,
  'problem.level_out_of_range': (p: P) =>
    `There is no level ${of(p, 'value')}: levels go from ${p.min ?? '1'} to ${p.max ?? '10'}.`,
  'problem.share_out_of_range': (p: P) => `A share of ${of(p, 'value')} is not possible: 0 to 100 %.`,
  'problem.porosity_out_of_range': (p: P) => `Porosity ${of(p, 'value')} is not on the scale.`,
  'problem.resistance_out_of_range': (p: P) => `Resistance ${of(p, 'value')} is not on the scale.`,
  'problem.length_out_of_range': (p: P) => `A length of ${of(p, 'value')} cm is not possible.`,
  'problem.density_out_of_range': (p: P) =>
    `A density of ${n.hairs(of(p, 'value'))} per cm² is not possible.`,
  'problem.diameter_out_of_range': (p: P) => `A hair thickness of ${of(p, 'value')} µm is not possible.`,
  'problem.scalp_area_out_of_range': (p: P) => `A scalp area of ${of(p, 'value')} cm² is not possible.`,
  'problem.weeks_out_of_range': (p: P) => `${n.weeks(of(p, 'value'))} ago is not possible.`,
  'problem.stretch_out_of_range': (p: P) => `A stretch of ${of(p, 'value')} % is not possible.`,
  'problem.doubt_out_of_range': (p: P) => `A doubt of ${of(p, 'value')} is not possible.`,
  'problem.woven_share_out_of_range': (p: P) =>
    `Packets cannot hold a share of ${of(p, 'value')} of an area (${of(p, 'min')} to ${of(p, 'max')}).`,
  'problem.woven_width_out_of_range': (p: P) => `A packet ${of(p, 'value')} mm wide is not possible.`,
  'problem.woven_from_no_area': (p: P) =>
    `${of(p, 'area')}: packets must come out of an area of this head that is not woven itself.`,
  'problem.woven_takes_all': (p: P) =>
    `The packets take all the hair of ${of(p, 'area')}. Leave some between them.`,
  'problem.aim_twice': (p: P) => `There are two targets for ${of(p, 'zone')}. Keep one of them.`,
  'problem.shares_do_not_add_up': (p: P) =>
    `The shares of the strands add to ${of(p, 'sum')}, not to the whole. Change one of them.`,
  'problem.spans_overlap': (p: P) =>
    `A span starts at ${of(p, 'from')} cm, before the one above it ends (${of(p, 'before')} cm).`,
  'problem.span_has_no_length': () => 'This span has no length. Move where it ends.',
  'problem.zone_has_no_fibres': () => 'This span has no reading yet.',
  'problem.area_has_no_spans': (p: P) => `${of(p, 'area')} has no span. Add one or remove the area.`,
  'problem.head_has_no_areas': () => 'The head has no area yet. Add one.',
  'problem.too_many_areas': (p: P) => `More areas than can be worked with (${of(p, 'max')}).`,
  'problem.head_too_fine': (p: P) =>
    `More kinds of hair than can be worked with (${of(p, 'max')}). Merge spans that are read alike.`,
  'problem.visit_handed_in': (p: P) =>
    `It was handed in on ${of(p, 'at').slice(0, 10)} and can no longer be changed. Add what was wrong as a correction.`,
  'problem.visit_erased': () => 'This visit was erased together with its client.',
  'problem.client_not_found': () => 'This client is not there any more. Open another from the list.',
  'problem.client_same_name': (p: P) =>
    `There is somebody named ${of(p, 'name')} already. Say whether it is the same person.`,
  'problem.redo_unknown': () => 'The earlier visit is not in the history. Choose another.',
  'problem.unknown_fact_kind': (p: P) => `“${of(p, 'kind')}” cannot be noted. Load the page again.`,
  'problem.fact_version': () => 'This page is older than the salon’s program. Load it again.',
  'problem.bad_instant': (p: P) => `“${of(p, 'text')}” is no time.`,
  'problem.left_empty': () => 'Something still has to be written here.',
  'problem.not_signed': () => 'There is no name under it yet. Draw or type it.',
  'problem.price_range': () => 'The price ends below where it begins. Put the lower one first.',
  'problem.date_range': () => 'The dates end before they begin. Put the earlier one first.',
  'problem.busy': () => 'Too much is being worked out at once. Ask again in a moment.',
  'problem.given_up': () => 'The work was given up. Ask again.',
  'problem.out_of_time': () => 'There was no answer in the time given. Allow more time, or merge areas.',
  'problem.too_many_scenarios': (p: P) =>
    `More scenarios than this head can be searched with (${of(p, 'max')}). Ask for fewer, or merge spans.`,
  'problem.name_missing': () => 'A name is missing.',
  'problem.name_used_twice': (p: P) => `The name “${of(p, 'name')}” is used twice. Change one of them.`,
  'problem.bad_date': (p: P) => `“${of(p, 'text')}” is not a day. Write day, month and year.`,
  'problem.too_long': (p: P) => `This text is too long (${n.letters(of(p, 'max'))} at most).`,
  'problem.control_character': () => 'This text holds a character that cannot be written.',
  'problem.aim_needs_one': () =>
    'Give one target for this zone: a shade, a level with its tone, or a colour.',
  'problem.second_tone_needs_level': () => 'A second tone needs a level. Give level and tones together.',
  'problem.shadow_needs_lengths': (p: P) =>
    `No hair lies below ${of(p, 'zone')} to be shadowed against. Give it a target of its own.`,
  'problem.aim_missing': (p: P) => `No target yet for ${of(p, 'zone')}. Choose one, or leave it as it is.`,
  'problem.unknown_shade': (p: P) => `The shade ${of(p, 'shade')} is not on this shelf. Choose another.`,
  'problem.unknown_zone': (p: P) => `${of(p, 'zone')} is not on this head any more. Remove its target.`,
  'problem.unknown_product': (p: P) => `${of(p, 'product')} is not on this shelf. Choose another.`,
  'problem.swatch_missing': (p: P) =>
    `${of(p, 'product')} says that it was measured, and has no swatch. Give the swatch, or its name alone.`,
  'problem.swatch_besides_name': (p: P) =>
    `${of(p, 'product')} says that it is known by its name alone, and has a swatch. Keep one of the two.`,
  'problem.swatch_hair_missing': (p: P) =>
    `${of(p, 'product')} was measured on stated hair, and the hair is not stated. Give its level.`,
  'problem.swatch_hair_besides_white': (p: P) =>
    `${of(p, 'product')} says that it was measured on white hair, and states another. Keep one of the two.`,
  'problem.swatch_lighter_than_its_hair': (p: P) =>
    `The swatch of ${of(p, 'product')} is lighter than its hair would be without colour. Correct the hair, its process or the swatch.`,
  'problem.name_is_no_colour': (p: P) =>
    `${of(p, 'product')} has no swatch, and its name says no colour. Give a level and a tone, or a swatch.`,
  'problem.known_by_without_colour': (p: P) =>
    `${of(p, 'product')} gives no colour to a bowl. Leave out its swatch and what it is known by.`,
  'problem.unknown_range': (p: P) => `The range ${of(p, 'range')} is not on this shelf.`,
  'problem.unknown_bowl': (p: P) => `Bowl ${of(p, 'bowl')} is not part of this plan.`,
  'problem.lab_out_of_range': () => 'This colour lies outside what hair can show.',
  'problem.grams_out_of_range': (p: P) => `${of(p, 'grams')} g is not an amount that can be weighed.`,
  'problem.bowl_passes_rule': (p: P) => `Bowl ${of(p, 'bowl')} breaks a rule. Change it, or leave it.`,
  'problem.unknown_rule': (p: P) => `There is no rule “${of(p, 'id')}”. Take it out of the house rules.`,
  'problem.rule_not_of_the_house': (p: P) =>
    `Rule “${of(p, 'id')}” is law or a floor: a house cannot change it. Take it out.`,
  'problem.rule_value_out_of_range': (p: P) =>
    `Rule “${of(p, 'id')}”: a house may set ${of(p, 'min')} to ${of(p, 'max')}.`,
  'problem.unknown_rule_figure': (p: P) =>
    `Rule “${of(p, 'id')}” has no figure “${of(p, 'figure')}”. Take it out.`,
  'problem.empty_bowl': () => 'There is nothing in this bowl.',
  'problem.nothing_in_the_bowl': () => 'There is nothing in this bowl.',
  'problem.two_makers_in_one_bowl': (p: P) =>
    `${of(p, 'product')} comes from another maker. Two makers never share a bowl.`,
  'problem.read_on_dry_hair': () => 'Read on dry hair, beside the salon’s own swatches.',
  'problem.history_unknown_test_first': () =>
    'The history is unknown: do the metal and strand tests before any peroxide.',
  'problem.failed_stretch': () =>
    'The wet stretch did not come back: no lightener, no high-lift, nothing at 6 % or above here.',
  'problem.extension_strand_first': () =>
    'Extensions: nothing is claimed here without a test on one strand of them.',
  'problem.not_begun': () => 'The visit has not begun: there is no clock to plan on.',
  'problem.unknown_task': (p: P) => `The clock knows no such task: ${of(p, 'task')}.`,
  'problem.already_on': (p: P) => `It is on the hair already: ${of(p, 'task')}.`,
  'problem.nobody_can': (p: P) => `Nobody on the team can do this: ${of(p, 'task')}. Add a person.`,
  'problem.clock_breaks': (p: P) =>
    `The times do not work: ${p.zone ?? '?'} would stay on ${p.minutes ?? '?'} min too long. A second colourist, smaller bowls or a shorter development would help.`,
  'problem.development_window_too_short': () => 'Applying takes longer than the product may stay on.',
  'problem.mix_life_too_short': () => 'Applying takes longer than the mix stays fresh. Plan smaller mixes.',
  'problem.leaves_too_late': () => 'The client would leave later than agreed.',
  'problem.search_stopped': () => 'Not every order of work was compared.',
  'problem.no_wish': () => 'There is no target to judge these bowls by.',
  'problem.range_gives_no_colour': () => 'That range gives no colour of its own.',
  'problem.no_bowls': () => 'There is no bowl to plan the time for.',
  'problem.unknown_key': (p: P) => `The visit holds something unknown: ${of(p, 'key')}.`,
  'problem.missing_key': (p: P) => `Something is missing: ${of(p, 'key')}.`,
  'problem.wrong_type': (p: P) => `Expected ${of(p, 'expected')}, found ${of(p, 'found')}.`,
  'problem.unknown_word': (p: P) => `“${of(p, 'word')}” is not a known word here.`,
  'problem.unknown_name': (p: P) => `“${of(p, 'name')}” is not known to this salon.`,
  'problem.visit_not_found': () => 'This visit is not there any more. Open one from the list.',
  'problem.entry_id_taken': () => 'Something else was saved under this id; nothing was overwritten.',
  'problem.not_an_id': () => 'This save has no valid id. Load the page again.',
  'problem.visit_changed_elsewhere': () =>
    'Somebody else saved this visit meanwhile; nothing was overwritten.',
  'problem.store_unavailable': () =>
    'The salon file cannot be written. Check the disk; nothing was lost so far.',
  'problem.store_moved': () =>
    'The salon file was moved, deleted or replaced. Nothing is saved any more: stop the server, put the file back, start again.',
  'problem.store_damaged': () =>
    'The salon file is damaged. Stop the server and put the last copy in its place.',
  'problem.store_foreign': () =>
    'The salon file is another one than Strandline writes. Stop the server and put the last copy in its place.',
  'problem.entry_broken': () =>
    'An entry of the salon file was changed after it was written. Compare with an older copy.',
  'problem.store_erased': () => 'This was erased from the salon; nothing can be added to it.',
  'problem.store_newer': () => 'The salon file was written by a newer program. Start the newer one.',
  'problem.percentages_unknown': (p: P) =>
    `Bowl ${of(p, 'bowl')}: not every percentage is declared, so the legal check is incomplete.`,
  'problem.stock_short': (p: P) => `${of(p, 'product')}: not enough on the shelf.`,
  'problem.band': (p: P) =>
    `A band: ${of(p, 'lighter')} comes out ${n.levels(of(p, 'levels'))} lighter than ${of(p, 'darker')}, where they meet.`,
  'problem.band_wished': (p: P) =>
    `As wished, ${of(p, 'lighter')} comes out ${n.levels(of(p, 'levels'))} lighter than ${of(p, 'darker')}.`,
  'problem.shared_for_stock': (p: P) =>
    `${of(p, 'product')}: only ${of(p, 'grams')} g on the shelf, so not every bowl gets it.`,
  'problem.left_out_for_stock': (p: P) =>
    `${of(p, 'product')} was left out: only ${of(p, 'grams')} g on the shelf.`,
  'problem.no_range_usable': () =>
    'No range of this shelf may be used on this hair today. Test or treat first.',
  'problem.nothing_to_apply': () => 'There is nothing to put on the clock. Plan at least one bowl.',
  'problem.longer_than_a_day': () => 'This takes longer than a day. Correct the minutes.',
  'problem.not_minutes': () => 'Minutes must be 0 or more.',
  'problem.target_below_minimum': () =>
    'The planned time is shorter than the shortest development of the range.',
  'problem.too_many_applications': () =>
    'Too many applications for one clock. Merge zones that get the same bowl.',
  'problem.too_many': (p: P) => `Too many entries here (${of(p, 'max')} at most).`,
  'problem.document_too_large': () => 'This visit has grown too large to read. Remove areas or spans.',
  'problem.unknown_schema': () =>
    'The server expects another kind of visit. Load the newer version of this app.',
  'problem.host_not_allowed': () =>
    'The server does not answer under this address. Open it under the one it names.',
  'problem.origin_not_allowed': () => 'This page comes from elsewhere; the server refuses its changes.',
  'problem.method_not_allowed': () =>
    'This app and the server do not fit together. Load the newer version of this app.',
  'problem.bad_request': () => 'The server could not read the request. Try again.',
  'problem.memory_short': () =>
    'There is not enough memory for this just now; what was stored is still there. Close other programs, then try again.',
  'problem.internal': () =>
    'The server failed at this; what was stored is still there. Look at its log, then try again.',
  'problem.zone_in_two_bowls': (p: P) =>
    `${of(p, 'zone')} is in two bowls of one step. Keep it in one of them, or give the later bowl the next step.`,
  'problem.ratio_not_of_range': (p: P) =>
    `Bowl ${of(p, 'bowl')}: the range does not allow a ratio of 1 : ${of(p, 'ratio')}. Mix as its instructions say.`,
  'problem.developer_not_of_range': (p: P) =>
    `Bowl ${of(p, 'bowl')}: the range does not allow ${of(p, 'percent')} % developer. Use a strength it names.`,
  'problem.longer_than_range_allows': (p: P) =>
    `Bowl ${of(p, 'bowl')}: ${of(p, 'minutes')} min is longer than the range allows (${of(p, 'max')}).`,
  'problem.two_ranges_in_one_bowl': (p: P) =>
    `Bowl ${of(p, 'bowl')}: ${of(p, 'product')} is of another range. Mix ranges only where their maker’s directions allow it.`,
  'problem.developer_alone': (p: P) => `Bowl ${of(p, 'bowl')} holds only developer. Add a shade.`,
  'problem.weighed_out_of_range': (p: P) =>
    `${of(p, 'value')} g cannot be in the bowl: it takes at most ${of(p, 'most')} g of this.`,
  'problem.over_legal_limit': (p: P) =>
    `Bowl ${of(p, 'bowl')} is over a legal limit. Do not use it; change its parts until it is within.`,
  'problem.not_permitted_use': (p: P) =>
    `Bowl ${of(p, 'bowl')} holds a substance that is not permitted for this use. Do not use it.`,
  'problem.minutes_out_of_range': (p: P) =>
    `${n.minutes(of(p, 'value'))}: it must be ${of(p, 'min')} to ${of(p, 'max')}.`,
  'problem.shelf_is_empty': () => 'The shelf holds no products. Add the salon’s products first.',
  'problem.shelf_too_large': (p: P) => `The shelf holds more than ${n.products(of(p, 'max'))}.`,
  'problem.not_an_amount': () => 'An amount must be a number of 0 or more.',
  'problem.too_many_people': () => 'There are too many people for one visit.',
  'problem.not_found': () => 'This is not there any more.',
  'problem.answer_not_json': () => 'The server’s answer could not be read. Restart it and try again.',
};
