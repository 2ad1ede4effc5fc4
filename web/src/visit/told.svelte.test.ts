import { flushSync } from 'svelte';
import { afterEach, expect, it, vi } from 'vitest';
import { hairShown } from '../strand/studio';
import { LONGEST_WAIT, withHair } from './told.svelte';

vi.mock('../strand/studio');
const shows: (() => void)[] = [];
vi.mocked(hairShown).mockImplementation(() => new Promise((show) => void shows.push(show)));
const turn = () => new Promise((go) => setTimeout(go));
let end = () => undefined as void;
afterEach(() => end());

it('tells an answer when its hair is shown, and never an older one after it', async () => {
  let newest = $state(1);
  let told: { readonly now: number } | undefined;
  const seen: number[] = [];
  end = $effect.root(() => {
    told = withHair(() => newest);
    $effect(() => void seen.push(told!.now));
  });
  const change = async (to: number) => {
    newest = to;
    flushSync();
    await turn();
  };
  flushSync();
  await turn();
  expect(told?.now, 'the first at once').toBe(1);
  await change(2);
  expect(told?.now, 'its hair is being drawn').toBe(1);
  await change(3);
  shows[2]?.();
  await turn();
  expect(told?.now).toBe(3);
  shows[1]?.();
  await turn();
  expect(told?.now).toBe(3);
  expect(seen).toEqual([1, 3]);
});

it('tells an answer without its hair where drawing hangs', async () => {
  vi.useFakeTimers();
  let newest = $state(1);
  let told: { readonly now: number } | undefined;
  end = $effect.root(() => {
    told = withHair(() => newest);
  });
  newest = 2;
  flushSync();
  await vi.advanceTimersByTimeAsync(LONGEST_WAIT - 10);
  expect(told?.now).toBe(1);
  await vi.advanceTimersByTimeAsync(20);
  expect(told?.now).toBe(2);
  vi.useRealTimers();
});
