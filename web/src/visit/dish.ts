import type { Addition, Running, RunningBowl } from '../api/types';

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

/** Typed grams: "12,5", "12.5 g"; undefined = not a weight. */
export function readGrams(text: string): number | undefined {
  const plain = /^\s*(\d{1,4}(?:[.,]\d{1,2})?)\s*g?\s*$/.exec(text)?.[1]?.replace(',', '.');
  const grams = plain === undefined ? NaN : Number(plain);
  return Number.isFinite(grams) && grams <= 5000 ? tenth(grams) : undefined;
}
