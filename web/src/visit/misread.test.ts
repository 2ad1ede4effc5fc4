import { describe, expect, it } from 'vitest';
import { newHead, withReading } from './head';
import { misread } from './misread';
import { readSpan } from './reading';

describe('a misread head', () => {
  const head = withReading(newHead(), 'crown', 'regrowth', { level: 9.8, white: 95 });
  const crown = (h: typeof head) => readSpan(h.areas.find((a) => a.id === 'crown')!.spans[0]!);

  it('is off everywhere and stays on its scales', () => {
    const off = misread(head, { level: 0.5, white: 15 });
    expect(crown(off)).toMatchObject({ level: 10, white: 100 });
    expect(readSpan(off.areas[0]!.spans[0]!).level).toBe(5.5);
  });

  it('is more porous, up to very high', () => {
    const porous = (h: typeof head) => h.areas[0]!.spans[0]!.porosity;
    expect(porous(misread(head, { porosity: 1 }))).toBe(2);
    expect(porous(misread(misread(head, { porosity: 1 }), { porosity: 5 }))).toBe(3);
    expect(porous(misread(head, { level: 0.5 }))).toBe(head.areas[0]!.spans[0]!.porosity);
  });

  it('does not grow white where there was none', () => {
    expect(readSpan(misread(head, { white: 15 }).areas[0]!.spans[0]!).white).toBe(0);
  });
});
