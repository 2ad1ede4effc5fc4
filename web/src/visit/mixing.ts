import type { Bowl, ProductView, ShelfAnswer, Visit } from '../api/types';
import { everywhere, zonesIn } from './aims';

/** Colour in a bowl that nobody weighed yet, g: a usual bowl (by choice). */
const FIRST_GRAMS = 30;
const tenth = (grams: number) => Math.round(grams * 10) / 10;

const productOf = (shelf: ShelfAnswer, id: string) => shelf.products.find((p) => p.id === id);
const isDeveloper = (shelf: ShelfAnswer, id: string) => productOf(shelf, id)?.cls === 'developer';
const rangeOf = (shelf: ShelfAnswer, id: string) => shelf.ranges.find((r) => r.id === id);
const sum = (parts: readonly { grams: number }[]) => parts.reduce((all, part) => all + part.grams, 0);

/** Ranges of which something can go into a bowl. */
export const rangesToMix = (shelf: ShelfAnswer) =>
  shelf.ranges.filter((r) => shelf.products.some((p) => p.range === r.id && p.cls !== 'developer'));

/** What a bowl of this range is mixed from, lightest level last, other things after the shades. */
export const shadesOf = (shelf: ShelfAnswer, range: string): ProductView[] =>
  shelf.products
    .filter((p) => p.range === range && p.cls !== 'developer')
    .toSorted((a, b) => Number(a.level === 0) - Number(b.level === 0) || a.level - b.level);

export const developersOf = (shelf: ShelfAnswer): ProductView[] =>
  shelf.products
    .filter((p) => p.cls === 'developer')
    .toSorted((a, b) => a.peroxide_percent - b.peroxide_percent);

export const coloursIn = (bowl: Bowl, shelf: ShelfAnswer) =>
  bowl.parts.filter((p) => !isDeveloper(shelf, p.product));
export const developersIn = (bowl: Bowl, shelf: ShelfAnswer) =>
  bowl.parts.filter((p) => isDeveloper(shelf, p.product));

/** Where a bowl of one's own goes first: what has a target, and what no other bowl of the same step is on. */
function firstZones(visit: Visit, bowls: readonly Bowl[]): string[] {
  const left = new Set((visit.aims ?? []).filter((aim) => aim.leave).map((aim) => aim.zone));
  const all = zonesIn(visit.head, {}).filter((zone) => !left.has(zone) || left.has(everywhere));
  const taken = new Set(bowls.flatMap((bowl) => bowl.zones));
  const free = all.filter((zone) => !taken.has(zone));
  return free.length ? free : all;
}

/** An empty bowl of the first range, with the next letter. */
export function nextBowl(visit: Visit, shelf: ShelfAnswer, bowls: readonly Bowl[]): Bowl {
  const used = new Set(bowls.map((bowl) => bowl.label));
  const label =
    [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((letter) => !used.has(letter)) ?? `${bowls.length + 1}`;
  const zones = firstZones(visit, bowls);
  const onTaken = bowls.filter((bowl) => bowl.zones.some((zone) => zones.includes(zone)));
  const step = Math.max(0, ...onTaken.map((bowl) => bowl.step ?? 1)) + 1;
  const bowl: Bowl = { label, range: '', parts: [], minutes: 0, zones, ...(step > 1 ? { step } : {}) };
  return ofRange(bowl, rangesToMix(shelf)[0]?.id ?? '', shelf);
}

/** The bowl emptied and made of another range, for that range's usual time. */
export const ofRange = (bowl: Bowl, range: string, shelf: ShelfAnswer): Bowl => ({
  ...bowl,
  range,
  parts: [],
  minutes: rangeOf(shelf, range)?.minutes?.target ?? 30,
});

/** As much developer as its range's first ratio asks for. */
function withDeveloper(bowl: Bowl, shelf: ShelfAnswer, developer: string | undefined): Bowl {
  const colours = coloursIn(bowl, shelf);
  const ratio = rangeOf(shelf, bowl.range)?.ratios?.[0] ?? 1;
  if (!developer || !(ratio > 0)) return { ...bowl, parts: colours };
  return { ...bowl, parts: [...colours, { product: developer, grams: tenth(ratio * sum(colours)) }] };
}

/** Another bottle, as much of it as the range asks for; the same again takes it out. */
export const withBottle = (bowl: Bowl, shelf: ShelfAnswer, developer: string): Bowl =>
  withDeveloper(
    bowl,
    shelf,
    developersIn(bowl, shelf).some((p) => p.product === developer) ? undefined : developer,
  );

/**
 * The shade put in or taken out. Shades that nobody weighed share the colour equally; a weighed one keeps its grams. The
 * developer follows.
 */
export function withShade(bowl: Bowl, shelf: ShelfAnswer, shade: string): Bowl {
  const colours = coloursIn(bowl, shelf);
  const equal = colours.every((part) => Math.abs(part.grams - colours[0]!.grams) < 0.1);
  const total = sum(colours) || FIRST_GRAMS;
  let next = colours.some((part) => part.product === shade)
    ? colours.filter((part) => part.product !== shade)
    : [...colours, { product: shade, grams: tenth(total / Math.max(colours.length, 1)) }];
  if (equal) next = next.map((part) => ({ ...part, grams: tenth(total / next.length) }));
  return withDeveloper({ ...bowl, parts: next }, shelf, developersIn(bowl, shelf)[0]?.product);
}

/** One part weighed; nothing else changes. */
export const withGrams = (bowl: Bowl, product: string, grams: number): Bowl => ({
  ...bowl,
  parts: bowl.parts.map((part) => (part.product === product ? { ...part, grams } : part)),
});

/** The bowl goes on these zones or comes off them; off every other bowl of its step. */
export function withZones(
  bowls: readonly Bowl[],
  label: string,
  zones: readonly string[],
  on: boolean,
): Bowl[] {
  const step = bowls.find((bowl) => bowl.label === label)?.step ?? 1;
  return bowls.map((bowl) => {
    if (bowl.label !== label && (!on || (bowl.step ?? 1) !== step)) return bowl;
    const rest = bowl.zones.filter((zone) => !zones.includes(zone));
    return { ...bowl, zones: bowl.label === label && on ? [...rest, ...zones] : rest };
  });
}

/** Bowls that can be judged: something in them, and somewhere to go. */
export const whole = (bowls: readonly Bowl[]): Bowl[] =>
  bowls
    .map((bowl) => ({ ...bowl, parts: bowl.parts.filter((part) => part.grams > 0) }))
    .filter((bowl) => bowl.parts.length && bowl.zones.length);
