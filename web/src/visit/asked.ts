import type { Answers, ShelfAnswer, SkinTest } from '../api/types';

// The words of the API in the order in which they are asked.
export const ages = ['unknown', 'adult', 'from_16_to_17', 'under_16'] as const;
export const reactions = ['unknown', 'none', 'stinging', 'rash', 'swelling', 'breathing'] as const;
export const tattoos = ['unknown', 'no_tattoo', 'no_reaction', 'reaction'] as const;
export const results: readonly NonNullable<SkinTest['result']>[] = [
  'unknown',
  'clear',
  'redness',
  'itch',
  'swelling',
  'rash',
  'blisters',
];
export const scalps = [
  'unknown',
  'calm',
  'sensitive',
  'broken',
  'infected',
  'infested',
  'plaque_calm',
  'plaque_flare',
  'sunburnt',
  'burn_healing',
  'operated',
] as const;

/** Everything was asked, and there was nothing to tell. */
export const asUsual: Answers = {
  age: 'adult',
  reaction: 'none',
  tattoo: 'no_tattoo',
  lightener_reaction: 'no',
  face_rash: 'no',
  scalp: 'calm',
};

/** Whose colour the shelf holds: what a skin test is taken to be of until another maker is written. */
export const makerOf = (shelf?: ShelfAnswer): string => shelf?.ranges[0]?.maker ?? '';

/** A skin test with this shelf's colour, read on that day and clear. */
export const readClear = (shelf: ShelfAnswer | undefined, read: string): SkinTest => ({
  maker: makerOf(shelf),
  read,
  result: 'clear',
});
