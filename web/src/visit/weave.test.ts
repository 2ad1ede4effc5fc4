import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Head, Visit } from '../api/types';
import { areaBecame, pruned, wishFor, withWish } from './aims';
import { addArea, joinAreas, partArea, readAlike, removeArea, renameArea, type Changed } from './areas';
import { copyReading, grown, moveEnd, newHead, newVisit, withArea, withReading } from './head';
import { readSpan, writeSpan } from './reading';
import { canWeave, mostShare, moveBorder, moveStart, packetsOf, strandsTakenUp, takeUp } from './weave';

const ids = (head: Head) => head.areas.map((a) => a.id);
const find = (head: Head, id: string) => head.areas.find((a) => a.id === id)!;
const start = newHead();
const woven = takeUp(start, 'top').head;
/** The visit after an edit, as the screens write it. */
const after = (visit: Visit, { head, became }: Changed) => pruned({ ...areaBecame(visit, became), head });

describe('taking up packets', () => {
  it('adds them after their area, with its reading, half a centimetre off the scalp', () => {
    const { head, id } = takeUp(withReading(start, 'top', 'lengths', { level: 8 }), 'top');
    expect(id).toBe('top packets');
    expect(ids(head)).toEqual(['front hairline', 'top', 'top packets', 'crown', 'sides', 'nape']);
    const packets = find(head, 'top packets');
    expect(packets).toMatchObject({ kind: 'top', woven: { from: 'top', share: 0.3, width_mm: 4 } });
    expect(packets.spans.map((s) => [s.id, s.from_cm, s.to_cm])).toEqual([
      ['regrowth', 0.5, 1.5],
      ['lengths', 1.5, 20],
    ]);
    expect(readSpan(packets.spans[1]!).level).toBe(8);
    // Two readings, not one that is seen twice.
    const other = withReading(head, 'top packets', 'lengths', { level: 9 });
    expect(readSpan(find(other, 'top').spans[1]!).level).toBe(8);
  });

  it('leaves out a span that ends too near to the scalp, and does nothing where all do', () => {
    const short = withArea(start, 'top', (a) => ({
      ...a,
      spans: [
        { ...a.spans[0]!, to_cm: 0.5 },
        { ...a.spans[1]!, from_cm: 0.5, to_cm: 20 },
      ],
    }));
    expect(find(takeUp(short, 'top').head, 'top packets').spans.map((s) => [s.id, s.from_cm])).toEqual([
      ['lengths', 0.5],
    ]);
    const cropped = withArea(start, 'top', (a) => ({ ...a, spans: [{ ...a.spans[0]!, to_cm: 0.5 }] }));
    expect(canWeave(cropped, find(cropped, 'top'))).toBe(false);
    expect(takeUp(cropped, 'top')).toEqual({ head: cropped, id: undefined });
  });

  it('leaves at least a twentieth between, however often', () => {
    let head = start;
    for (let i = 0; i < 9; i++) head = takeUp(head, 'top').head;
    const shares = packetsOf(head, 'top').map((a) => a.woven!.share);
    expect(shares).toEqual([0.3, 0.3, 0.3, 0.05]);
    expect(packetsOf(head, 'top').map((a) => a.id)).toEqual([
      'top packets',
      'top packets 2',
      'top packets 3',
      'top packets 4',
    ]);
    expect(mostShare(head, 'top')).toBe(0);
    expect(mostShare(head, 'top', 'top packets')).toBe(30);
    expect(mostShare(woven, 'top', 'top packets')).toBe(90);
    expect(canWeave(head, find(head, 'top packets'))).toBe(false);
  });

  it('begins them where it is said, before their first span ends', () => {
    const packets = find(woven, 'top packets');
    expect(moveStart(packets, 0).spans[0]!.from_cm).toBe(0);
    expect(moveStart(packets, 9).spans[0]!.from_cm).toBe(1.4);
  });
});

describe('a border of an area that has packets', () => {
  const ends = (head: Head) => ['top', 'top packets'].map((id) => find(head, id).spans.map((s) => s.to_cm));

  it('takes theirs along where it lay in the same place', () => {
    const moved = moveBorder(woven, 'top', 0, 2.4);
    expect(ends(moved)).toEqual([
      [2.4, 20],
      [2.4, 20],
    ]);
    expect(find(moved, 'top packets').spans.map((s) => s.from_cm)).toEqual([0.5, 2.4]);
    expect(ends(moveBorder(moved, 'top', 1, 25))).toEqual([
      [2.4, 25],
      [2.4, 25],
    ]);
  });

  it('leaves one that was read for them, and other areas', () => {
    const own = withArea(woven, 'top packets', (area) => moveEnd(area, 0, 3));
    const moved = moveBorder(own, 'top', 0, 2.4);
    expect(ends(moved)).toEqual([
      [2.4, 20],
      [3, 20],
    ]);
    expect(ends(moveBorder(woven, 'top packets', 0, 3))[0]).toEqual([1.5, 20]);
    expect(find(moved, 'crown')).toBe(find(own, 'crown'));
  });

  it('never turns their span inside out', () => {
    expect(ends(moveBorder(woven, 'top', 0, 0.2))).toEqual([
      [0.2, 20],
      [0.6, 20],
    ]);
  });
});

describe('packets and their area', () => {
  const gold = { level: 8, tone: 'gold' as const };
  const bowl = { label: 'B', range: 'r', parts: [], minutes: 30, zones: ['top packets/regrowth'] };
  const visit: Visit = {
    ...withWish({ ...newVisit('A', '2024-05-02'), head: woven }, { area: 'top packets' }, gold),
    bowls: [bowl],
  };

  it('keep their area when it is renamed, and are called after it', () => {
    const next = after(visit, renameArea(woven, 'top', 'fringe'));
    expect(ids(next.head).slice(1, 3)).toEqual(['fringe', 'fringe packets']);
    expect(packetsOf(next.head, 'fringe')).toHaveLength(1);
    expect(wishFor(next, 'fringe packets/lengths')).toEqual(gold);
    expect(next.bowls?.[0]?.zones).toEqual(['fringe packets/regrowth']);
  });

  it('keep a name of their own', () => {
    const own = after(visit, renameArea(woven, 'top packets', 'lights'));
    expect(packetsOf(own.head, 'top').map((a) => a.id)).toEqual(['lights']);
    const next = after(own, partArea(own.head, 'top', 'front-back'));
    expect(ids(next.head).slice(1, 5)).toEqual(['top front', 'lights', 'top back', 'lights 2']);
    expect(wishFor(next, 'lights 2/regrowth')).toEqual(gold);
  });

  it('are in both parts of a parted area, with wishes and bowls', () => {
    const next = after(visit, partArea(woven, 'top', 'front-back'));
    expect(ids(next.head).slice(1, 5)).toEqual([
      'top front',
      'top front packets',
      'top back',
      'top back packets',
    ]);
    for (const part of ['top front', 'top back']) {
      expect(packetsOf(next.head, part).map((a) => a.woven?.share)).toEqual([0.3]);
      expect(wishFor(next, `${part} packets/lengths`)).toEqual(gold);
    }
    expect(next.bowls?.[0]?.zones).toEqual(['top front packets/regrowth', 'top back packets/regrowth']);
    expect(partArea(woven, 'top packets', 'halves').head).toBe(woven);
  });

  it('make areas read differently; those of the kept reading stay when they are joined', () => {
    expect(readAlike(woven, ['top', 'crown'])).toBe(false);
    expect(readAlike(takeUp(woven, 'crown').head, ['top', 'crown'])).toBe(true);
    const kept = after(visit, joinAreas(woven, ['top', 'crown'], 'top'));
    expect(ids(kept.head)).toEqual(['front hairline', 'top + crown', 'top + crown packets', 'sides', 'nape']);
    expect(packetsOf(kept.head, 'top + crown')).toHaveLength(1);
    expect(wishFor(kept, 'top + crown packets/lengths')).toEqual(gold);
    const gone = after(visit, joinAreas(woven, ['top', 'crown'], 'crown'));
    expect(ids(gone.head)).toEqual(['front hairline', 'top + crown', 'sides', 'nape']);
    expect(gone.aims).toEqual([]);
    expect(gone.bowls).toEqual([]);
  });

  it('go with it when it is removed, and alone when they are put back', () => {
    expect(ids(removeArea(woven, 'top'))).toEqual(['front hairline', 'crown', 'sides', 'nape']);
    expect(removeArea(woven, 'top packets')).toEqual(start);
    const only = { ...woven, areas: woven.areas.filter((a) => a.kind === 'top') };
    expect(removeArea(only, 'top')).toBe(only);
    expect(pruned({ ...visit, head: start }).aims).toEqual([]);
  });

  it('never lose their area and stay within its hair, whatever is done', () => {
    const edit = fc.record({
      what: fc.constantFrom('weave', 'part', 'join', 'rename', 'remove', 'add'),
      at: fc.nat(20),
      to: fc.nat(20),
    });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 10 }), (edits) => {
        let head = start;
        for (const { what, at, to } of edits) {
          const [one, two] = [at, to].map((n) => ids(head)[n % head.areas.length]!) as [string, string];
          if (what === 'weave') head = takeUp(head, one).head;
          else if (what === 'part') head = partArea(head, one, 'left-right').head;
          else if (what === 'join') head = joinAreas(head, [one, two], one).head;
          else if (what === 'rename') head = renameArea(head, one, `own ${to}`).head;
          else if (what === 'remove') head = removeArea(head, one);
          else head = addArea(head, 'temples', one).head;
          expect(new Set(ids(head)).size).toBe(head.areas.length);
          for (const area of head.areas) {
            if (area.woven) expect(find(head, area.woven.from).woven).toBeUndefined();
            else expect(area.spans[0]!.from_cm).toBe(0);
            const taken = packetsOf(head, area.id).reduce((sum, p) => sum + p.woven!.share, 0);
            expect(taken).toBeLessThanOrEqual(0.95 + 1e-9);
          }
        }
      }),
    );
  });

  it('keep their own reading when one is copied, and stay off the scalp while hair grows', () => {
    const lighter = withReading(woven, 'top packets', 'lengths', { level: 9 });
    expect(find(copyReading(lighter, 'crown'), 'top packets')).toBe(find(lighter, 'top packets'));
    expect(copyReading(lighter, 'top packets')).toBe(lighter);
    const spans = find(grown(woven, 2), 'top packets').spans;
    expect(spans.map((s) => [s.from_cm, s.to_cm])).toEqual([
      [0.5, 3.5],
      [3.5, 22],
    ]);
  });
});

describe('strands that get a bowl of their own', () => {
  const strands = {
    name: 'old highlights',
    share: 0.25,
    level: 9,
    tone: 'beige',
    origin: 'lightened',
    packet_mm: 6,
  } as const;
  const head = withArea(start, 'top', (a) => ({
    ...a,
    spans: a.spans.map((s) =>
      s.id === 'lengths'
        ? writeSpan(s, { ...readSpan(s), level: 5, white: 15, strands: [{ ...strands }] })
        : s,
    ),
  }));

  it('become packets of their share, width and colour there; the hair between keeps its own', () => {
    const next = strandsTakenUp(head, 'top', 'lengths', 'old highlights');
    expect(next.id).toBe('top packets');
    const packets = find(next.head, 'top packets');
    expect(packets.woven).toEqual({ from: 'top', share: 0.25, width_mm: 6 });
    expect(readSpan(packets.spans[1]!)).toMatchObject({
      level: 9,
      tone: 'beige',
      origin: 'lightened',
      white: 0,
      naturalLevel: 5,
    });
    expect(readSpan(packets.spans[0]!)).toEqual(readSpan(find(head, 'top').spans[0]!));
    // 15 of the 75 in a hundred that stay between.
    const between = readSpan(find(next.head, 'top').spans[1]!);
    expect(between).toMatchObject({ level: 5, white: 20, strands: [] });
  });

  it('stay where they are when there are none of that name, or the packets would not reach that span', () => {
    expect(strandsTakenUp(head, 'top', 'lengths', 'streak')).toEqual({ head, id: undefined });
    const short = withArea(head, 'top', (a) => ({
      ...a,
      spans: [
        { ...a.spans[1]!, id: 'near', from_cm: 0, to_cm: 0.5 },
        { ...a.spans[1]!, from_cm: 0.5 },
      ],
    }));
    expect(strandsTakenUp(short, 'top', 'near', 'old highlights').head).toBe(short);
  });
});
