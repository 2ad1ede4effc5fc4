import type { Body, Fact } from '../api/facts';
import type {
  Area,
  Bowl,
  Head,
  PlanAnswer,
  Running,
  ShelfAnswer,
  Span,
  Timeline,
  Tone,
  Visit,
} from '../api/types';
import { happened } from './happened';
import { afterPlan } from './carry';
import { zoneId } from './head';
import { readSpan, writeSpan } from './reading';
import { half } from './words';

export type Result = Body<'result'>;
export type Reached = Result['zones'][number];

const ROUNDS = { lightened: true, coloured: true };
const tenth = (grams: number) => Math.round(grams * 10) / 10;

/** What went into one mix: what was weighed where anything was, else what was asked for. */
function mixes(running: Running): Body<'mixed'>[] {
  return running.bowls.flatMap((bowl) => {
    const weighed = (running.additions ?? []).filter((one) => one.bowl === bowl.label);
    const nths = [...new Set(weighed.map((one) => one.mix))].sort((a, b) => a - b);
    const { label, range, minutes, zones, damp_hair, step, parts, names, range_name } = bowl;
    const same = { label, range, minutes, zones, damp_hair, step, names, range_name };
    if (!nths.length) return [{ ...same, parts, mix: 1 }];
    return nths.map((mix) => {
      const mine = weighed.filter((one) => one.mix === mix);
      const grams = (product: string) =>
        tenth(mine.reduce((sum, one) => sum + (one.product === product ? one.grams : 0), 0));
      return {
        ...same,
        mix,
        parts: parts.map((part) => ({ product: part.product, grams: grams(part.product) })),
        at_min: Math.min(...mine.map((one) => one.at_min)),
      };
    });
  });
}

/** What was mixed, from the counter, or from the plan where the visit has no clock. */
export function mixedOf(visit: Visit, plan: PlanAnswer | undefined): Body<'mixed'>[] {
  if (visit.running) return mixes(visit.running);
  return (plan?.bowls ?? []).map((bowl) => ({
    label: bowl.label,
    range: bowl.range,
    minutes: bowl.minutes,
    zones: [...bowl.zones],
    damp_hair: bowl.damp_hair,
    step: bowl.step,
    parts: bowl.parts.map(({ product, grams }) => ({ product, grams })),
    names: bowl.parts.map((part) => part.name),
    range_name: bowl.range_name,
    mix: 1,
  }));
}

/** One bowl per label, all its mixes together: what a prediction asks for. */
export function bowlsOf(mixed: readonly Body<'mixed'>[]): Bowl[] {
  const out = new Map<string, Bowl>();
  for (const { label, range, minutes, zones, damp_hair, step, parts } of mixed) {
    const before = out.get(label);
    const together = parts.map((part, i) => ({
      product: part.product,
      grams: tenth(part.grams + (before?.parts[i]?.grams ?? 0)),
    }));
    out.set(label, {
      label,
      range,
      minutes,
      zones,
      damp_hair,
      ...(step && step > 1 ? { step } : {}),
      parts: together,
    });
  }
  return [...out.values()].filter((bowl) => bowl.parts.some((part) => part.grams > 0));
}

/** Where each bowl lay and for how long, from the clock. */
export function appliedOf(
  mixed: readonly Body<'mixed'>[],
  timeline: Timeline | undefined,
): Body<'applied'>[] {
  if (timeline?.developments.length)
    return timeline.developments.map((d) => ({
      zone: d.zone,
      bowl: d.bowl,
      from_min: tenth(d.first_touch),
      until_min: tenth(d.leaves_at),
    }));
  return bowlsOf(mixed).flatMap(({ label, zones }) => zones.map((zone) => ({ zone, bowl: label })));
}

/**
 * The head as it leaves: as predicted for what was mixed, with the levels and tones that were seen. A measured colour is
 * kept as it is where one kind of hair is left to see; among white it would be neither's own.
 */
export function headAfter(
  head: Head,
  plan: PlanAnswer,
  shelf: ShelfAnswer,
  reached: readonly Reached[],
): Head {
  const left = afterPlan(head, plan, shelf);
  const seen = new Map(reached.map((one) => [one.zone, one]));
  const span = (area: Area, one: Span): Span => {
    const zone = seen.get(zoneId(area, one));
    if (!zone) return one;
    const read = readSpan(one);
    const alone = read.white === 0 && !read.strands.length;
    return writeSpan(one, {
      ...read,
      level: half(zone.level),
      tone: zone.tone,
      ...(zone.measured && alone ? { measured: zone.measured } : {}),
    });
  };
  return {
    ...left,
    areas: left.areas.map((area) => ({ ...area, spans: area.spans.map((one) => span(area, one)) })),
  };
}

/** Zones that got a bowl, with what was predicted for them, to a hundredth of a level. */
export const foreseen = (plan: PlanAnswer | undefined): { zone: string; level: number; tone: Tone }[] =>
  (plan?.zones ?? [])
    .filter((zone) => zone.bowl)
    .map(({ zone, planned }) => ({ zone, level: Math.round(planned.level * 100) / 100, tone: planned.tone }));

export const factsFor = (
  mixed: readonly Body<'mixed'>[],
  applied: readonly Body<'applied'>[],
  result: Result,
) => [
  ...mixed.map((one) => happened('mixed', one)),
  ...applied.map((one) => happened('applied', one)),
  happened('result', result),
];

/** The newest result among facts; undefined where none was told. */
export function resultOf(facts: readonly Fact[]): Result | undefined {
  const found = facts.findLast((fact) => fact.kind === 'result');
  return found?.kind === 'result' ? found.body : undefined;
}

/** Begun today or tomorrow to put an earlier visit right: its rounds stand in the hair's history (`withRounds`). */
export const isFix = ({ head }: Visit): boolean =>
  head.areas.some(({ spans }) =>
    spans.some(({ services = [] }) =>
      services.some(({ kind, weeks_ago = Infinity }) => kind in ROUNDS && weeks_ago * 7 < 2),
    ),
  );
