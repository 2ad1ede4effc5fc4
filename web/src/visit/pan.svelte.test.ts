import { expect, it, vi } from 'vitest';
import { Away } from '../api/client';
import { scaleAfter, type ScaleWord } from '../api/scale';
import { Pan } from './pan.svelte';

vi.mock('../api/scale');
const says = (state: ScaleWord['state'], grams: number, seq = 1): ScaleWord => ({ seq, state, grams });

it('tells grams since the tare, and nothing before it', () => {
  const pan = new Pan();
  expect(pan.here).toBe(false);
  pan.hear(says('stable', 180));
  expect(pan.net).toBeUndefined();
  pan.settled((gross) => (pan.tare = gross));
  pan.hear(says('moving', 192.34));
  expect(pan.net).toBe(12.3);
});

it('books only what has settled, once', () => {
  const pan = new Pan();
  const booked: number[] = [];
  pan.hear(says('moving', 11));
  pan.settled((gross) => booked.push(gross));
  expect([booked, pan.waits]).toEqual([[], true]);
  pan.hear(says('moving', 12));
  pan.hear(says('stable', 12.5));
  pan.hear(says('stable', 13));
  expect([booked, pan.waits]).toEqual([[12.5], false]);
});

it('says nothing of grams while the scale cannot', () => {
  const pan = new Pan();
  pan.tare = 100;
  for (const state of ['overload', 'fault', 'away', 'none'] as const) {
    pan.hear(says(state, 0));
    expect(pan.net, state).toBeUndefined();
    let booked = false;
    pan.settled(() => (booked = true));
    expect(booked, state).toBe(false);
  }
});

it('listens on after a silence, from the beginning', async () => {
  const stop = new AbortController();
  const asked: number[] = [];
  vi.useFakeTimers();
  vi.mocked(scaleAfter).mockImplementation(async (after) => {
    asked.push(after);
    if (asked.length === 1) return says('stable', 5, 7);
    if (asked.length === 2) throw new Away();
    stop.abort();
    return says('stable', 6, 1);
  });
  const pan = new Pan();
  const over = pan.listen(stop.signal);
  await vi.advanceTimersByTimeAsync(0);
  expect(pan.silent).toBe(true);
  await vi.advanceTimersByTimeAsync(1000);
  await over;
  expect(asked).toEqual([0, 7, 0]);
  vi.useRealTimers();
});

it('asks no more where no scale stands', async () => {
  vi.mocked(scaleAfter)
    .mockReset()
    .mockResolvedValue(says('none', 0, 0));
  const pan = new Pan();
  await pan.listen(new AbortController().signal);
  expect(scaleAfter).toHaveBeenCalledTimes(1);
  expect(pan.here).toBe(false);
});
