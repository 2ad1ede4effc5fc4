import { describe, expect, it } from 'vitest';
import { fitText, lastMinute, ticks, tickStep, type Lane } from './timeline';

const lane = (end: number, latest?: number): Lane => ({
  id: 'a',
  label: 'A',
  kind: 'bowl',
  stretches: [{ id: 's', start: 0, end, text: '', latest }],
});

describe('timeline', () => {
  it('ends at the last allowed minute', () => {
    expect(lastMinute([lane(30, 45), lane(40)])).toBe(45);
    expect(lastMinute([])).toBe(1);
  });

  it('keeps tick labels apart', () => {
    for (const minutes of [10, 45, 90, 200, 400]) {
      for (const width of [240, 600, 1200]) {
        const step = tickStep(minutes, width);
        if (step < 240) expect((step / minutes) * width).toBeGreaterThanOrEqual(64);
        expect(ticks(minutes, width)[0]).toBe(0);
        expect(ticks(minutes, width).at(-1)).toBeLessThanOrEqual(minutes);
      }
    }
  });

  it('cuts words that do not fit and says so', () => {
    expect(fitText('check', 60)).toBe('check');
    expect(fitText('apply: crown, nape', 60)).toBe('apply:…');
    expect(fitText('check', 20)).toBe('');
  });
});
