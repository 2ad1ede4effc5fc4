import { beforeEach, expect, it, vi } from 'vitest';
import * as api from '../api/facts';
import { Clock } from './clock.svelte';
import { saved, visit } from './test-visit';
import { Work } from './work.svelte';

vi.mock('../api/facts');
vi.mock('../offline/drafts', async (real) => ({
  ...(await real<object>()),
  waiting: { keep: vi.fn(), read: vi.fn() },
}));

beforeEach(() => {
  vi.resetAllMocks();
  vi.mocked(api).factsOf.mockResolvedValue([]);
  vi.mocked(api).tellFact.mockImplementation((_, fact) =>
    Promise.resolve({ ...fact, store_seq: 1, visit_id: 'v', seq: 1, version: 1 } as api.Fact),
  );
});

it('stop now freezes a visit whose clock does not run, until somebody says why it goes on', async () => {
  const work = new Work(saved(visit));
  const clock = new Clock(work);
  expect(clock.frozen).toBeUndefined();
  clock.stop();
  clock.stop(); // pressed twice it is one stop
  await vi.waitFor(() => expect(work.facts.waits).toEqual([]));
  expect(vi.mocked(api).tellFact).toHaveBeenCalledTimes(1);
  expect(clock.frozen).toBeDefined();
  // What it was is told afterwards; that does not thaw it.
  await work.facts.tell('stopped', { kind: 'sting' });
  expect(clock.frozen).toBeDefined();
  await clock.thaw('pressed by mistake');
  expect(clock.frozen).toBeUndefined();
  expect(work.facts.last('stopped.over')?.body.why).toBe('pressed by mistake');
});
