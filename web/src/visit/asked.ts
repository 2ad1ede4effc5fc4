import type { Answers, IncidentKind, ShelfAnswer, SkinTest, Visit } from '../api/types';

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

export const yesNo = ['unknown', 'no', 'yes'] as const;
/** Asked more rarely, with yes or no for an answer. */
export const asksYesNo = ['lightener_reaction', 'face_rash', 'related_allergy', 'asthma'] as const;
export const medicines = ['unknown', 'none', 'skin_thinning', 'allergy', 'steroid', 'other'] as const;
export const incidentKinds: readonly IncidentKind[] = [
  'sting',
  'swelling',
  'heat',
  'burn',
  'breakage',
  'reaction',
];

/** How many of the rarer questions have an answer. */
export function moreTold({ answers = {} }: Visit): number {
  const words = [...asksYesNo, 'medicine', 'doctor_agrees'] as const;
  const numbers = ['pregnancy_week', 'treatment_ended', 'washed_hours'] as const;
  return (
    words.filter((key) => (answers[key] ?? 'unknown') !== 'unknown').length +
    numbers.filter((key) => answers[key] !== undefined).length +
    (answers.incidents?.length ? 1 : 0)
  );
}

/** The questions before anything is mixed have their answers: opening the page answers none. */
export const wasAsked = ({ answers = {} }: Visit): boolean =>
  (['age', 'reaction', 'tattoo', 'scalp'] as const).every((key) => (answers[key] ?? 'unknown') !== 'unknown');
