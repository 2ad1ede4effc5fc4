type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** Why a bowl, an order or a refusal is as it is. */
export const why = {
  'why.natural_share_for_white': (_p: P) => 'Natural shade in the mix covers the white.',
  'why.counter_tone': (_p: P) => 'A counter-tone takes back the warmth that lifting shows.',
  'why.average_rule': (_p: P) => 'The shade is chosen so that it meets the hair halfway.',
  'why.developer_for_lift': (_p: P) => 'The developer is the weakest that lifts far enough.',
  'why.one_bowl_serves': (_p: P) => 'One bowl serves these zones well enough.',
  'why.own_bowl': (_p: P) => 'These zones need a bowl of their own.',
  'why.colour_does_not_lift_colour': (_p: P) =>
    'Colour does not lift colour: what is tinted must be cleaned or lightened first.',
  'why.lift_limit': (_p: P) => 'That is more lift than this shelf gives on this hair.',
  'why.white_cover': (_p: P) => 'White would still show beside the rest.',
  'why.condition': (_p: P) => 'The hair would suffer more than the house allows.',
  'why.law': (_p: P) => 'A legal limit stands against it.',
  'why.tone': (_p: P) => 'The tone cannot be met with these shades.',
  'why.whitest_first': (_p: P) => 'Whitest hair first: it needs the longest.',
  'why.resistant_first': (_p: P) => 'Resistant hair first: it needs the longest.',
  'why.crown_to_nape_then_sides': (_p: P) => 'Crown to nape, then the sides.',
  'why.hairline_last': (_p: P) => 'The hairline last: fine hair takes fast.',
  'why.away_from_scalp_first': (_p: P) => 'Away from the scalp first: its warmth speeds up lifting.',
  'why.scalp_zone_later': (_p: P) => 'The scalp zone later: its warmth speeds up lifting.',
  'why.back_before_front': (_p: P) => 'Back before front when lightening.',
  'why.porous_ends_last': (_p: P) => 'Porous ends last: they take fast.',
  'why.lengths_after_regrowth': (_p: P) => 'Lengths after the regrowth.',
  'why.as_listed': (_p: P) => 'In the order in which the areas are listed.',
  'why.small_mix': (_p: P) => 'Small mixes, so that each is used while it works.',
  'why.one_basin_time': (_p: P) => 'Everything on the scalp leaves at one basin time.',
  'why.out_of_order': (p: P) => `Out of the usual order to save time: ${of(p, 'zone')}.`,
};
