import type { Addition, Running, RunningBowl } from '../api/types';
import { GRAMS_PER_OUNCE } from '../i18n/format';

/** One part of a mix: what is asked for, what is in. */
export interface PartIn {
  product: string;
  name: string;
  asked: number;
  grams: number;
}

/** A mix on the counter. */
export interface Dish {
  bowl: RunningBowl;
  mix: number;
  parts: PartIn[];
  /** The part that is due; undefined = all are in. */
  due: PartIn | undefined;
  total: number;
}

/** Less than this is what a spoon leaves: a part within it is in, g (common practice: mixing scales show 0.1 to 1 g). */
export const NEAR_G = 0.5;

const sum = (additions: readonly Addition[]) => additions.reduce((all, one) => all + one.grams, 0);
const tenth = (grams: number) => Math.round(grams * 10) / 10;

/** Of a mix that is made besides those of the plan, g (common practice: enough for what is still bare). */
export const AGAIN_G = 20;

/** How much of the bowl one mix is: an even part of those that were planned, a small one when it is made again. */
export function shareOf(running: Running, bowl: RunningBowl, mix: number): number {
  const planned = running.plan.tasks.filter((t) => t.kind === 'mix' && t.bowl === bowl.label).length;
  if (mix <= Math.max(1, planned)) return 1 / Math.max(1, planned);
  return shareFor(bowl, AGAIN_G);
}

/** The share of a bowl that weighs so many grams; the whole bowl at most. */
export function shareFor(bowl: RunningBowl, grams: number): number {
  const whole = bowl.parts.reduce((all, part) => all + part.grams, 0);
  return whole > 0 ? Math.min(1, grams / whole) : 1;
}

/** What has gone into a mix; `share` of the whole bowl is asked for where it is mixed in several small ones. */
export function dishOf(running: Running, bowl: RunningBowl, mix: number, share = 1): Dish {
  const mine = (running.additions ?? []).filter((a) => a.bowl === bowl.label && a.mix === mix);
  const parts = bowl.parts.map((part, i) => ({
    product: part.product,
    name: bowl.names?.[i] ?? part.product,
    asked: tenth(part.grams * share),
    grams: tenth(sum(mine.filter((a) => a.product === part.product))),
  }));
  const due = parts.find((part) => part.grams < part.asked - NEAR_G);
  return { bowl, mix, parts, due, total: tenth(sum(mine)) };
}

/** Too much of a part: by how many grams, and the factor by which all others would have to follow. */
export function tooMuch(dish: Dish): { part: PartIn; over: number; factor: number } | undefined {
  const over = dish.parts
    .map((part) => ({ part, over: tenth(part.grams - part.asked), factor: part.grams / part.asked }))
    .filter(({ over, part }) => over > NEAR_G && part.asked > 0)
    .sort((a, b) => b.factor - a.factor);
  return over[0];
}

/** The same bowl with every part `factor` times as much: the shares, and so the colour, stay what they were. */
export const scaled = (bowl: RunningBowl, factor: number): RunningBowl => ({
  ...bowl,
  parts: bowl.parts.map((part) => ({ ...part, grams: tenth(part.grams * factor) })),
});

/** The bowl as it really lies there, where more is in than was asked. */
export const asItIs = (dish: Dish): RunningBowl => ({
  ...dish.bowl,
  parts: dish.bowl.parts.map((part, i) => ({
    ...part,
    grams: Math.max(dish.parts[i]!.grams, dish.parts[i]!.asked),
  })),
});

/** How often a bowl was mixed, or begun to be. */
export const mixesOf = (running: Running, label: string): number =>
  Math.max(1, ...(running.additions ?? []).filter((a) => a.bowl === label).map((a) => a.mix));

/** A typed weight in grams: "12,5", "12.5 g", "0.44 oz"; without a unit in that of the device. Undefined = not a weight. */
export function readGrams(text: string, unit: 'g' | 'oz' = 'g'): number | undefined {
  const [, figure, said] = /^\s*(\d{1,4}(?:[.,]\d{1,2})?)\s*(g|oz)?\s*$/i.exec(text) ?? [];
  const number = figure === undefined ? NaN : Number(figure.replace(',', '.'));
  const grams = (said?.toLowerCase() ?? unit) === 'oz' ? number * GRAMS_PER_OUNCE : number;
  return Number.isFinite(grams) && grams <= 5000 ? tenth(grams) : undefined;
}
