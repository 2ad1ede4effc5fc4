import type { Area, ColourOrigin, Head, PlanAnswer, ShelfAnswer, Span, ZoneView } from '../api/types';
import type { Body } from '../api/facts';
import { freeName } from './head';
import { readSpan, writeSpan, type Reading } from './reading';

/** The smallest step in which a level is read; white that stands out by less is not read as white. */
const HALF_LEVEL = 0.5;

/** Classes that develop on the hair. */
const COLOURS: readonly string[] = ['permanent', 'high_lift', 'demi'];

const tidy = (cm: number) => Math.round(cm * 10) / 10;
const halves = (level: number) => Math.min(Math.max(Math.round(level * 2) / 2, 1), 10);

function originAfter(
  plan: PlanAnswer,
  shelf: ShelfAnswer,
  label: string,
  before: ColourOrigin,
): ColourOrigin {
  const parts = plan.bowls.find((bowl) => bowl.label === label)?.parts ?? [];
  const classes = parts.map((part) => shelf.products.find((p) => p.id === part.product)?.cls);
  if (before === 'lightened' || classes.includes('lightener')) return 'lightened';
  return classes.includes('direct') ? 'direct' : 'tinted';
}

function outcome(before: Reading, zone: ZoneView, origin: ColourOrigin): Reading {
  const { planned } = zone;
  return {
    level: halves(planned.level),
    tone: planned.tone,
    white: planned.contrast_levels < HALF_LEVEL ? 0 : before.white,
    origin,
    naturalLevel: before.origin === 'natural' ? before.level : before.naturalLevel,
    doubt: {},
    strands: before.strands,
  };
}

/** The head as a plan leaves it: zones that got a bowl read as predicted, the others as they were. */
export function afterPlan(head: Head, plan: PlanAnswer, shelf: ShelfAnswer): Head {
  const zones = new Map(plan.zones.map((zone) => [zone.zone, zone]));
  const treated = (area: Area, span: Span): Span => {
    const zone = zones.get(`${area.id}/${span.id}`);
    if (!zone?.bowl) return span;
    const before = readSpan(span);
    const next = outcome(before, zone, originAfter(plan, shelf, zone.bowl, before.origin));
    return writeSpan({ ...span, porosity: Math.round(zone.planned.porosity * 100) / 100 }, next);
  };
  return {
    ...head,
    areas: head.areas.map((area) => ({ ...area, spans: area.spans.map((span) => treated(area, span)) })),
  };
}

/** As it grows, from where the first span began: its natural level and white, nothing else that was done to it. */
function grownSpan(id: string, first: Span, cm: number): Span {
  const read = readSpan(first);
  const level = read.origin === 'natural' ? read.level : (read.naturalLevel ?? read.level);
  const tone = read.origin === 'natural' ? read.tone : 'natural';
  const { resistance } = first;
  const from = first.from_cm ?? 0;
  const bare: Span = {
    id,
    from_cm: from,
    to_cm: tidy(from + cm),
    ...(resistance === undefined ? {} : { resistance }),
  };
  return writeSpan(bare, {
    level,
    tone,
    white: read.white,
    origin: 'natural',
    naturalLevel: undefined,
    doubt: {},
    strands: [],
    ...(read.origin === 'natural' && read.measured ? { measured: read.measured } : {}),
  });
}

const alike = (a: Span, b: Span) =>
  JSON.stringify({ ...a, id: '', from_cm: 0, to_cm: 0, porosity: 0 }) ===
  JSON.stringify({ ...b, id: '', from_cm: 0, to_cm: 0, porosity: 0 });

/** Neighbours with the same reading become one span, under the name of the outer one. */
function joined(spans: readonly Span[]): Span[] {
  const out: Span[] = [];
  for (const span of spans) {
    const last = out.at(-1);
    if (last && alike(last, span)) out[out.length - 1] = { ...span, from_cm: last.from_cm };
    else out.push(span);
  }
  return out;
}

/**
 * `after` with `cm` of new hair at the scalp, which grows as `before` (the same head, read before it was coloured)
 * grew there. What was coloured moves outwards; a span that was called regrowth becomes a band.
 */
export function returning(before: Head, after: Head, cm: number): Head {
  const areas = after.areas.map((area, index) => {
    const first = before.areas[index]?.spans[0];
    if (cm <= 0 || !first) return { ...area, spans: joined(area.spans) };
    const ids = area.spans.map((span) => span.id);
    const moved = area.spans.map((span) => ({
      ...span,
      id: span.id === first.id ? freeName('band', ids) : span.id,
      from_cm: tidy((span.from_cm ?? 0) + cm),
      to_cm: tidy(span.to_cm + cm),
    }));
    return { ...area, spans: [grownSpan(first.id, first, cm), ...joined(moved)] };
  });
  return { ...after, areas };
}

type Mixed = Pick<Body<'mixed'>, 'zones' | 'parts'>;

/**
 * `after` with what was mixed so many days ago told as services of its spans: what is put right today or tomorrow
 * counts with what was done then. Each bowl, and each mix of it, is a round.
 */
export function withRounds(after: Head, mixed: readonly Mixed[], shelf: ShelfAnswer, days: number): Head {
  const classOf = new Map(shelf.products.map((one) => [one.id, one.cls]));
  const count = (zone: string, asks: (cls: string) => boolean) =>
    mixed.filter(
      ({ zones, parts }) =>
        zones.includes(zone) &&
        parts.some(({ product, grams }) => grams > 0 && asks(classOf.get(product) ?? '')),
    ).length;
  const weeks_ago = Math.round((days / 7) * 100) / 100;
  const round = (kind: 'lightened' | 'coloured', layers: number) =>
    layers > 0 ? [{ kind, weeks_ago, layers }] : [];
  const told = (area: Area, span: Span): Span => {
    const zone = `${area.id}/${span.id}`;
    const services = [
      ...(span.services ?? []),
      ...round(
        'lightened',
        count(zone, (cls) => cls === 'lightener'),
      ),
      ...round(
        'coloured',
        count(zone, (cls) => COLOURS.includes(cls)),
      ),
    ];
    return services.length ? { ...span, services } : span;
  };
  return {
    ...after,
    areas: after.areas.map((area) => ({ ...area, spans: area.spans.map((span) => told(area, span)) })),
  };
}
