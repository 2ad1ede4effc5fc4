import { render, screen } from '@testing-library/svelte';
import { createRawSnippet } from 'svelte';
import { describe, expect, it, vi } from 'vitest';
import { checkPicture } from './check';
import { AREAS, KINDS, pop } from './demo-data';
import { describeStrand } from './describe';
import { HALF_GAP, HALF_HEIGHT, layoutStrip, LETTER_RADIUS, sharedScale } from './layout';
import { bladeColour } from './overlay';
import { pcg, rnd, seedFrom } from './random';
import StrandBoard from './StrandBoard.svelte';
import StrandStrip from './StrandStrip.svelte';
import type { StrandPicture } from './types';
import { strandWordsEn } from './words.en';

const [hairline, top] = AREAS.map((a) => a.picture) as [StrandPicture, StrandPicture];
const bad: StrandPicture = { ...hairline, lengthCm: 99 };

describe('laying out strips', () => {
  it('is true to scale: the longest fits and the others compare', () => {
    const pxPerCm = sharedScale([hairline, top], 600);
    const [a, b] = [hairline, top].map((picture) => layoutStrip(picture, { width: 600, pxPerCm }));
    expect(b?.hairWidth).toBeLessThanOrEqual(600);
    expect((a?.hairWidth ?? 0) / (b?.hairWidth ?? 1)).toBeCloseTo(22 / 32, 6);
    expect(a?.joins).toEqual([2.8 * pxPerCm]);
  });

  it('puts the plan below today, or leaves it out', () => {
    expect(layoutStrip(hairline, { width: 600, pxPerCm: 15 }).plannedTop).toBe(2 + HALF_HEIGHT + HALF_GAP);
    const spans = hairline.spans.map((s) => ({ ...s, planned: [] }));
    const layout = layoutStrip({ ...hairline, spans }, { width: 600, pxPerCm: 15 });
    expect(layout.plannedTop).toBeNull();
    expect(layout.fans).toEqual([]);
  });

  it('letters bowls that follow one another once, however many spans they go on', () => {
    const spans = hairline.spans.map((span) => ({ ...span, bowls: ['A', 'B'] }));
    const { letters } = layoutStrip({ ...hairline, spans }, { width: 600, pxPerCm: 15 });
    expect(letters.map((l) => l.letter)).toEqual(['A', 'B']);
    const each = hairline.spans.map((span) => ({ ...span, bowls: ['A'] }));
    expect(layoutStrip({ ...hairline, spans: each }, { width: 600, pxPerCm: 15 }).letters.length).toBe(
      hairline.spans.length,
    );
  });

  it('keeps bowl letters apart on short spans', () => {
    const { letters } = layoutStrip(hairline, { width: 300, pxPerCm: 3 });
    expect(letters.map((l) => l.letter)).toEqual(['A', 'C']);
    expect((letters[1]?.x ?? 0) - (letters[0]?.x ?? 0)).toBeGreaterThanOrEqual(2 * LETTER_RADIUS);
  });

  it('shows every bowl of a span, in order', () => {
    const spans = hairline.spans.map((s, i) => (i === 0 ? { ...s, bowls: ['A', 'B'] } : s));
    const { letters } = layoutStrip({ ...hairline, spans }, { width: 600, pxPerCm: 15 });
    expect(letters.map((l) => l.letter)).toEqual(['A', 'B', 'C']);
    expect(describeStrand({ ...hairline, spans }, strandWordsEn).join(' ')).toContain('bowl A and bowl B');
  });

  it('leaves hair bare that nobody read at the scalp', () => {
    const [first, ...rest] = hairline.spans;
    const spans = [{ ...first!, fromCm: 1 }, ...rest];
    expect(checkPicture({ ...hairline, spans })).toEqual([]);
    expect(layoutStrip({ ...hairline, spans }, { width: 600, pxPerCm: 15 }).bareTo).toBe(15);
  });

  it('marks a colour outside the screen once per half', () => {
    const crop = KINDS.find((k) => k.id === 'crop')?.picture;
    expect(crop && layoutStrip(crop, { width: 300, pxPerCm: 20 }).marks.map((m) => m.half)).toEqual([
      'planned',
    ]);
  });

  it('opens the fan from the 10th to the 90th percentile', () => {
    const fan = { p10: [0.1, 0.1, 0.1], p50: [0.2, 0.2, 0.2], p90: [0.6, 0.6, 0.6] } as const;
    const blades = Array.from({ length: 9 }, (_, i) => bladeColour(fan, i, 9)[0]);
    expect(blades[4]).toBeCloseTo(0.2, 6);
    expect([...blades].sort((a, b) => a - b)).toEqual(blades);
  });
});

describe('random numbers', () => {
  it('repeat and spread', () => {
    expect(pcg(1)).toBe(pcg(1));
    expect(seedFrom('top')).not.toBe(seedFrom('crown'));
    const many = Array.from({ length: 4000 }, (_, i) => rnd(9, i, 1));
    expect(many.reduce((a, b) => a + b, 0) / many.length).toBeCloseTo(0.5, 1);
    expect(many.every((v) => v >= 0 && v < 1)).toBe(true);
  });
});

describe('the words for a picture', () => {
  it('say length, shares, packets, bowl and doubt', () => {
    const text = describeStrand(hairline, strandWordsEn);
    expect(text[0]).toBe('Hair strip, 22 cm from scalp to tip.');
    expect(text[1]).toContain('Regrowth, 0 to 2.8 cm: today 60 % white and 40 % natural brown; planned');
    expect(text[1]).toContain('lights in packets 3 mm wide every 9 mm');
    expect(text[1]).toMatch(/bowl A; lightness L\* \d+, likely \d+ to \d+\.$/);
    expect(text).toHaveLength(3);
  });

  it('say what the screen cannot show and that nothing is planned', () => {
    const crop = KINDS.find((k) => k.id === 'crop')?.picture as StrandPicture;
    expect(describeStrand(crop, strandWordsEn)[1]).toContain('100 % red (outside what this screen can show)');
    const spans = crop.spans.map((s) => ({ ...s, planned: [] }));
    expect(describeStrand({ ...crop, spans }, strandWordsEn)[1]).toContain('nothing planned');
  });
});

describe('the strip on the page', () => {
  it('is one image with the words as its name', () => {
    render(StrandStrip, { picture: hairline, words: strandWordsEn, id: 'hairline' });
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
      describeStrand(hairline, strandWordsEn).join(' '),
    );
  });

  it('says what is wrong instead of drawing a bad picture', () => {
    const problem = createRawSnippet<[readonly { code: string }[]]>((found) => ({
      render: () =>
        `<p>${found()
          .map((p) => p.code)
          .join()}</p>`,
    }));
    render(StrandStrip, { picture: bad, words: strandWordsEn, id: 'x', problem });
    expect(screen.getByText('spans_not_to_tip')).toBeTruthy();
    expect(screen.queryByRole('img')).toBeNull();
    expect(() => render(StrandStrip, { picture: bad, words: strandWordsEn, id: 'x' })).toThrow(
      'spans_not_to_tip',
    );
  });

  it('shows each area with its title, and says what changed once the picture rests', async () => {
    vi.useFakeTimers();
    const { rerender } = render(StrandBoard, { rows: AREAS, words: strandWordsEn });
    expect(screen.getAllByRole('img')).toHaveLength(AREAS.length);
    expect(screen.getByText('front hairline')).toBeTruthy();
    const grey = {
      ...hairline,
      spans: hairline.spans.map((s) => ({ ...s, today: [pop('grey', 1, 'ash')] })),
    };
    await rerender({ rows: [{ id: 'hairline', title: 'front hairline', picture: grey }] });
    const said = () => screen.getByRole('img').getAttribute('aria-label');
    expect(said()).not.toContain('100 % grey');
    await vi.advanceTimersByTimeAsync(300);
    expect(said()).toContain('100 % grey');
    vi.useRealTimers();
  });
});
