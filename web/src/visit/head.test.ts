import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Span } from '../api/types';
import {
  copyReading,
  endRange,
  freeName,
  grown,
  lengthOf,
  moveEnd,
  newHead,
  removeSpan,
  splitSpan,
  withReading,
  trimmed,
} from './head';
import { readSpan, valueOf, writeSpan, type Reading } from './reading';

const share = fc.integer({ min: 0, max: 100 }).map((n) => n / 100);
const tone = fc.constantFrom('natural' as const, 'gold' as const, 'ash' as const);
const origin = fc.constantFrom('natural' as const, 'tinted' as const, 'lightened' as const);
const level = fc.integer({ min: 2, max: 20 }).map((n) => n / 2);
const reading: fc.Arbitrary<Reading> = fc.record({
  level,
  tone,
  origin,
  white: fc.integer({ min: 0, max: 20 }).map((n) => n * 5),
  naturalLevel: fc.option(level, { nil: undefined }),
  doubt: fc.record({
    level: fc.constantFrom(undefined, 0.25, 0.75),
    white: fc.constantFrom(undefined, 5, 15),
  }),
  strands: fc.array(fc.record({ name: fc.constant('old highlights'), share, level, tone, origin }), {
    maxLength: 2,
  }),
});
const span: Span = { id: 'regrowth', from_cm: 0, to_cm: 2, porosity: 1 };

function joined(spans: readonly Span[]) {
  spans.forEach((s, i) => {
    expect(s.to_cm).toBeGreaterThan(s.from_cm ?? 0);
    if (i > 0) expect(s.from_cm).toBe(spans[i - 1]!.to_cm);
  });
}

describe('readings', () => {
  it('are written and read back without loss', () => {
    fc.assert(
      fc.property(reading, (r) => {
        fc.pre(r.strands.reduce((sum, s) => sum + s.share, 0) + r.white / 100 <= 1);
        fc.pre(
          r.strands.every((s) => s.share > 0) &&
            (r.white > 0 || r.doubt.white === undefined || !r.strands.length),
        );
        const back = readSpan(writeSpan(span, r));
        expect({ ...back, strands: [] }).toEqual({ ...r, strands: [] });
        expect(back.strands.map((s) => [s.share, s.level])).toEqual(r.strands.map((s) => [s.share, s.level]));
      }),
    );
  });

  it('with strands of their own always have shares that add to 1', () => {
    fc.assert(
      fc.property(reading, (r) => {
        const written = writeSpan(span, r);
        if (!written.populations) return;
        const sum = written.populations.reduce((total, p) => total + valueOf(p.share, 0), 0);
        expect(sum).toBeCloseTo(1, 3);
      }),
    );
  });

  it('leave everything else of the span alone', () => {
    expect(writeSpan({ ...span, resistance: 0.5 }, readSpan(span)).resistance).toBe(0.5);
  });
});

describe('areas', () => {
  const area = newHead().areas[0]!;

  it('stay joined from scalp to tip whatever is moved, split or removed', () => {
    const change = fc.oneof(
      fc.record({ move: fc.nat(4), cm: fc.double({ min: -5, max: 200, noNaN: true }) }),
      fc.record({ split: fc.nat(4) }),
      fc.record({ remove: fc.nat(4) }),
    );
    fc.assert(
      fc.property(fc.array(change, { maxLength: 12 }), (changes) => {
        let now = area;
        for (const c of changes) {
          if ('move' in c) now = moveEnd(now, c.move, c.cm);
          else if ('split' in c)
            now = splitSpan(
              now,
              c.split,
              freeName(
                'band',
                now.spans.map((s) => s.id),
              ),
            );
          else now = removeSpan(now, c.remove);
        }
        expect(now.spans.length).toBeGreaterThan(0);
        expect(now.spans[0]!.from_cm).toBe(0);
        joined(now.spans);
      }),
    );
  });

  it('say how far the end of a span may go: its neighbours, or the tip in halves', () => {
    const area = newHead().areas[0]!; // regrowth to 1.5 cm, lengths to 20 cm
    expect(endRange(area, 0)).toEqual({ min: 0.1, max: 19.9, step: 0.1 });
    expect(endRange(area, 1)).toEqual({ min: 2, max: 200, step: 0.5 });
    expect(moveEnd(area, 0, endRange(area, 0).max).spans[0]!.to_cm).toBe(19.9);
    expect(moveEnd(area, 1, 1000).spans[1]!.to_cm).toBe(200);
  });

  it('copy a reading to the others and keep their length', () => {
    let head = newHead();
    head = withReading(head, 'crown', 'regrowth', { white: 40, level: 6.5 });
    head = { ...head, areas: head.areas.map((a) => (a.id === 'nape' ? moveEnd(a, 1, 32) : a)) };
    const copied = copyReading(head, 'crown');
    for (const a of copied.areas) expect(readSpan(a.spans[0]!).white).toBe(40);
    expect(lengthOf(copied.areas.find((a) => a.id === 'nape')!)).toBe(32);
  });

  it('grow at the scalp', () => {
    const head = grown(newHead(), 1.2);
    expect(head.areas[0]!.spans.map((s) => [s.from_cm, s.to_cm])).toEqual([
      [0, 2.7],
      [2.7, 21.2],
    ]);
    joined(head.areas[0]!.spans);
  });
});

describe('a cut', () => {
  const span = (id: string, from_cm: number, to_cm: number) => ({ id, from_cm, to_cm, level: 5 });
  const head = {
    areas: [{ id: 'top', spans: [span('regrowth', 0, 1.5), span('lengths', 1.5, 20), span('ends', 20, 24)] }],
  };
  const ends = (cm: number) => trimmed(head, cm).areas[0]?.spans.map(({ id, to_cm }) => `${id} ${to_cm}`);
  it('shortens the tips and drops what is gone', () => {
    expect(ends(0)).toEqual(['regrowth 1.5', 'lengths 20', 'ends 24']);
    expect(ends(2.5)).toEqual(['regrowth 1.5', 'lengths 20', 'ends 21.5']);
    expect(ends(6)).toEqual(['regrowth 1.5', 'lengths 18']);
    expect(ends(90)).toEqual(['regrowth 0.5']);
  });
});
