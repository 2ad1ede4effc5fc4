import type { ColourOrigin, Lab, Population, Span, Tone } from '../api/types';

/** A number as a document may write it: plain, or with the reader's doubt (one standard deviation). */
type Written = number | { value: number; sd?: number };

export const valueOf = (written: Written | undefined, otherwise: number): number =>
  written === undefined ? otherwise : typeof written === 'number' ? written : written.value;

export const doubtOf = (written: Written | undefined): number | undefined =>
  typeof written === 'object' ? written.sd : undefined;

const write = (value: number, sd: number | undefined): Written => (sd === undefined ? value : { value, sd });

/** Strands that differ from the rest of their span: earlier highlights, a dyed streak. */
export interface Strands {
  name: string;
  /** Share of all fibres of the span, 0…1. */
  share: number;
  level: number;
  tone: Tone;
  origin: ColourOrigin;
  /** Width of one packet in mm; absent = mixed with the rest fibre by fibre. */
  packet_mm?: number;
}

/** How sure the colourist is: standard deviations in levels and in percentage points; absent = the server's own. */
export interface Doubt {
  level?: number;
  white?: number;
}

/** What the reading screen edits of one span. */
export interface Reading {
  level: number;
  tone: Tone;
  white: number; // % of fibres
  origin: ColourOrigin;
  naturalLevel?: number;
  doubt: Doubt;
  strands: Strands[];
  /** L*a*b* (D65, 10°) as it was measured: counts instead of level and tone, until one of them is read anew. */
  measured?: Lab;
}

const tidy = (value: number) => Math.round(value * 1e4) / 1e4;

function fromPopulations(populations: readonly Population[]): Reading {
  const white = populations.find((p) => p.kind === 'white');
  const base = populations.find((p) => p !== white && p.kind !== 'white');
  const rest = populations.filter((p) => p !== white && p !== base);
  return {
    level: valueOf(base?.level, 5),
    tone: base?.tone ?? 'natural',
    white: tidy(valueOf(white?.share, 0) * 100),
    origin: base?.origin ?? 'natural',
    naturalLevel: base?.natural_level === undefined ? undefined : valueOf(base.natural_level, 5),
    doubt: {
      level: doubtOf(base?.level),
      white: white && doubtOf(white.share) !== undefined ? tidy(doubtOf(white.share)! * 100) : undefined,
    },
    strands: rest.map((p) => ({
      name: p.name ?? '',
      share: valueOf(p.share, 0),
      level: valueOf(p.level, 5),
      tone: p.tone ?? 'natural',
      origin: p.origin ?? 'natural',
      ...(p.packet_mm ? { packet_mm: p.packet_mm } : {}),
    })),
    ...(base?.measured ? { measured: base.measured } : {}),
  };
}

/** The reading of a span, whichever of the two ways the document writes it. */
export function readSpan(span: Span): Reading {
  if (span.populations?.length) return fromPopulations(span.populations);
  return {
    level: valueOf(span.level, 5),
    tone: span.tone ?? 'natural',
    white: valueOf(span.white_percent, 0),
    origin: span.origin ?? 'natural',
    naturalLevel: span.natural_level === undefined ? undefined : valueOf(span.natural_level, 5),
    doubt: { level: doubtOf(span.level), white: doubtOf(span.white_percent) },
    strands: [],
  };
}

function toPopulations(reading: Reading): Population[] {
  const white = Math.min(reading.white / 100, 1);
  let left = 1 - white;
  const strands = reading.strands.map((s): Population => {
    const share = tidy(Math.min(s.share, left));
    left -= share;
    return { ...s, share, kind: 'pigmented' };
  });
  const base: Population = {
    name: 'pigmented',
    kind: 'pigmented',
    share: tidy(Math.max(left, 0)),
    level: write(reading.level, reading.doubt.level),
    tone: reading.tone,
    origin: reading.origin,
    ...(reading.naturalLevel === undefined ? {} : { natural_level: reading.naturalLevel }),
    ...(reading.measured ? { measured: reading.measured } : {}),
  };
  const whites: Population = {
    name: 'white',
    kind: 'white',
    share: write(tidy(white), reading.doubt.white === undefined ? undefined : reading.doubt.white / 100),
    origin: reading.origin === 'natural' ? 'natural' : reading.origin,
  };
  return [base, whites, ...strands].filter((p) => p === base || valueOf(p.share, 0) > 0);
}

/** `span` with this reading; shares of the populations add to 1. */
export function writeSpan(span: Span, reading: Reading): Span {
  const next = { ...span };
  delete next.populations;
  delete next.level;
  delete next.tone;
  delete next.white_percent;
  delete next.origin;
  delete next.natural_level;
  if (reading.strands.length > 0 || reading.measured) return { ...next, populations: toPopulations(reading) };
  return {
    ...next,
    level: write(reading.level, reading.doubt.level),
    tone: reading.tone,
    white_percent: write(reading.white, reading.doubt.white),
    origin: reading.origin,
    ...(reading.naturalLevel === undefined ? {} : { natural_level: reading.naturalLevel }),
  };
}

/** `reading` with this change; what an eye reads anew was not measured so. */
export function changed(reading: Reading, change: Partial<Reading>): Reading {
  const next = { ...reading, ...change };
  const anew = next.level !== reading.level || next.tone !== reading.tone || next.origin !== reading.origin;
  if (anew && !change.measured) delete next.measured;
  return next;
}
