import { describe, expect, it } from 'vitest';
import { drawnWidth, fitText, lastMinute, lettersUsed, ticks, tickStep, type Lane } from './timeline';

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

  it('shows the longest words that fit, down to a letter', () => {
    const words = ['rinse A', 'rinse', 'R'];
    expect([80, 48, 14, 4].map((width) => fitText(words, width))).toEqual(['rinse A', 'rinse', 'R', '']);
  });

  it('draws a short stretch wide enough for its letter where there is room', () => {
    const stretch = (start: number, end: number) => ({ id: String(start), start, end, text: '' });
    const hands: Lane = { ...lane(0), stretches: [stretch(0, 1), stretch(10, 11), stretch(11, 30)] };
    expect(hands.stretches.map((s) => drawnWidth(s, hands, 8))).toEqual([14, 6, 150]);
  });

  it('says what its letters stand for, each once', () => {
    const stretch = (id: string, text: string, word: string, letter: string) => ({
      ...{ id, start: 0, end: 1, text },
      shorter: [word, letter],
    });
    const hands = [
      stretch('1', 'mix A', 'mix', 'M'),
      stretch('2', 'mix B', 'mix', 'M'),
      stretch('3', 'dry', 'dry', 'D'),
    ];
    const lanes: Lane[] = [{ id: 'h', label: 'h', kind: 'hands', stretches: hands }];
    expect(lettersUsed(lanes, (s) => (s.id === '3' ? 'dry' : 'M'))).toEqual([['M', 'mix']]);
  });
});
