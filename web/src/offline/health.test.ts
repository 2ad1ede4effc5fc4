import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { healthEveryMs, watchHealth } from './health';
import { server } from './server.svelte';

const problems = (code: string) => JSON.stringify({ problems: [{ code, path: '', params: {} }] });
let answers: (Response | Error)[] = [];
let stop: () => void;

beforeEach(() => {
  vi.useFakeTimers();
  server.ailing = undefined;
  server.away = false;
  vi.stubGlobal('fetch', () => {
    const next = answers.shift();
    return next instanceof Error
      ? Promise.reject(next)
      : Promise.resolve(next ?? new Response('{"up":true}'));
  });
});
afterEach(() => {
  stop();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

it('a store that is not well is told, and no more once it is', async () => {
  answers = [new Response(problems('entry_broken'), { status: 503 })];
  stop = watchHealth();
  await vi.advanceTimersByTimeAsync(0);
  expect(server.ailing?.code).toBe('entry_broken');
  await vi.advanceTimersByTimeAsync(healthEveryMs);
  expect(server.ailing).toBeUndefined();
});

it('a server that does not answer leaves what is known of its store', async () => {
  answers = [new Response(problems('store_damaged'), { status: 503 }), new TypeError('refused')];
  stop = watchHealth();
  await vi.advanceTimersByTimeAsync(healthEveryMs);
  expect(server.away).toBe(true);
  expect(server.ailing?.code).toBe('store_damaged');
});

it('nothing is asked once it is over', async () => {
  answers = [];
  stop = watchHealth();
  await vi.advanceTimersByTimeAsync(0);
  answers = [new Response(problems('store_damaged'), { status: 503 })];
  stop();
  await vi.advanceTimersByTimeAsync(3 * healthEveryMs);
  expect(server.ailing).toBeUndefined();
});
