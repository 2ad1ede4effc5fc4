import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Away } from '../api/client';
import type { PlanAnswer } from '../api/types';
import * as api from '../api/visits';
import { hand } from '../ui/hand.svelte';
import { read, saved, visit } from './test-visit';
import { Work } from './work.svelte';

vi.mock('../api/visits');
const server = vi.mocked(api);

const answer = (stopped: string, gap: number, bowls: unknown[] = []) =>
  ({ bowls, zones: [], routes: [], report: { stopped, gap, objective: gap } }) as unknown as PlanAnswer;
const whole = answer('exhausted', 0, [{ label: 'A' }]);

beforeEach(() => {
  vi.useFakeTimers();
  vi.resetAllMocks();
  server.assess.mockResolvedValue({ schema: 'strandline.assess/1', zones: [], notes: [] });
  server.aim.mockResolvedValue({ schema: 'strandline.aim/1', targets: [] });
  server.saveVisit.mockImplementation((_, seq, document) => Promise.resolve(saved(document, seq + 1)));
});

/** The plan is asked for, and the hand is still for as long as it takes. */
async function planned(work: Work): Promise<void> {
  const asked = work.planNow();
  await vi.advanceTimersByTimeAsync(200);
  await asked;
}

describe('the plan of an open visit', () => {
  it('comes back to the found bowls without searching again when own ones are undone', async () => {
    const found = answer('exhausted', 0);
    server.plan.mockResolvedValue(found);
    server.whatIf.mockResolvedValue({ ...found });
    const work = new Work(saved({ ...visit, aims: [{ zone: '*', level: 6 }] }, 4));
    await planned(work);
    const undo = work.tryBowls([
      { label: 'A', range: 'r', parts: [], minutes: 30, damp_hair: false, zones: ['crown/regrowth'] },
    ]);
    await planned(work);
    expect(server.whatIf).toHaveBeenCalledTimes(2);
    undo();
    await planned(work);
    expect(server.plan).toHaveBeenCalledTimes(1);
    expect(work.plan).toBe(found);
    expect(work.planIsCurrent).toBe(true);
  });

  it('finds the way again that its stored bowls come from, once, or says that it is gone', async () => {
    const own = { label: 'A', range: 'r', parts: [], minutes: 30, zones: [] };
    const stored = { ...visit, aims: [{ zone: '*', level: 9 }], bowls: [own], way: 'lighten' };
    const lighten = { kind: 'lighten', visits: [] };
    const searched = { ...answer('exhausted', 0), routes: [{ kind: 'remove', visits: [] }, lighten] };
    server.whatIf.mockResolvedValue({ bowls: [], zones: [], routes: [] } as unknown as PlanAnswer);
    server.plan.mockResolvedValue(searched as unknown as PlanAnswer);
    const work = new Work(saved(stored, 4));
    await planned(work);
    expect(work.route).toBe(lighten);
    expect(server.plan.mock.lastCall?.[0].bowls).toEqual([]);
    await planned(work);
    expect(server.plan).toHaveBeenCalledTimes(1);
    // Changed bowls stay on it, none leave it.
    work.tryBowls([{ ...own, minutes: 40 }]);
    expect(work.visit.way).toBe('lighten');
    work.tryBowls([]);
    expect(work.visit.way).toBe('');
    expect(work.route).toBeUndefined();

    server.plan.mockResolvedValue({ ...searched, routes: [] } as unknown as PlanAnswer);
    const gone = new Work(saved(stored, 4));
    await planned(gone);
    expect(gone.route).toBeUndefined();
    expect(gone.routeGone).toBe(true);
  });

  it('asks for a search without own bowls and for a what-if with them', async () => {
    const plan = answer('exhausted', 0);
    server.plan.mockResolvedValue(plan);
    server.whatIf.mockResolvedValue(plan);
    const work = new Work(saved(visit));
    await planned(work);
    expect(work.planIsCurrent).toBe(true);
    expect([server.plan.mock.calls.length, server.whatIf.mock.calls.length]).toEqual([1, 0]);
    work.tryBowls([{ label: 'A', range: 'r', parts: [], minutes: 30, zones: [] }]);
    await planned(work);
    // Roughly at once, then with every scenario once the hand is still.
    expect(server.whatIf.mock.calls.map(([asked]) => asked.options?.scenarios)).toEqual([64, undefined]);
    expect(work.trying).toBe(false);
    work.change(read(50));
    expect(work.planIsCurrent).toBe(false);
  });

  it('follows grams that are held, and works the last ones out once more when screens are told', async () => {
    const found = answer('exhausted', 0);
    server.whatIf.mockImplementation(() => Promise.resolve({ ...found }));
    const work = new Work(saved(visit));
    const grams = (g: number) => ({
      label: 'A',
      range: 'r',
      parts: [{ product: 'p', grams: g }],
      minutes: 30,
      zones: [],
    });
    const asked = () =>
      server.whatIf.mock.calls.map(([sent]) => [sent.bowls?.[0]?.parts[0]?.grams, sent.options]);
    hand.hold();
    for (const g of [31, 32]) {
      work.tryBowls([grams(g)]);
      await vi.advanceTimersByTimeAsync(80);
      expect(work.planIsCurrent).toBe(true);
    }
    hand.release();
    await planned(work); // as the screen does
    const rough = { scenarios: 64 };
    expect(asked()).toEqual([
      [31, rough],
      [32, rough],
      [32, undefined],
    ]);
  });

  it('leaves every scenario for when taps have ended', async () => {
    server.whatIf.mockImplementation(() => Promise.resolve(answer('exhausted', 0)));
    const work = new Work(saved(visit));
    const asked = () => server.whatIf.mock.calls.map(([sent]) => sent.options?.scenarios);
    for (const minutes of [30, 35, 40]) {
      work.tryBowls([{ label: 'A', range: 'r', parts: [], minutes, zones: [] }]);
      void work.planNow();
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(asked()).toEqual([64, 64, 64]);
    expect(work.trying).toBe(true);
    await vi.advanceTimersByTimeAsync(100);
    expect(asked()).toEqual([64, 64, 64, undefined]);
    expect(server.whatIf.mock.lastCall?.[0].bowls?.[0]?.minutes).toBe(40);
    expect([work.trying, work.planIsCurrent]).toEqual([false, true]);
  });
});

describe('a search that is stopped', () => {
  /** The next search takes so long, or until it is left off. */
  const takes = (ms: number, plan: PlanAnswer) =>
    server.plan.mockImplementationOnce(
      (_, signal) =>
        new Promise((resolve, reject) => {
          setTimeout(() => resolve(plan), ms);
          signal?.addEventListener('abort', () => reject(signal.reason as Error));
        }),
    );
  const asked = (call: number) => server.plan.mock.calls[call]?.[0];

  it('shows the best so far with what is open, then all of it when it goes on', async () => {
    const best = answer('cancelled', 0.4, [{ label: 'A' }]);
    takes(60_000, whole);
    takes(3000, best);
    takes(9000, whole);
    const work = new Work(saved(visit));
    void work.planNow();
    await vi.advanceTimersByTimeAsync(3000);
    expect([work.searching, work.stopping, work.plan]).toEqual([true, false, undefined]);

    void work.stopHere();
    void work.stopHere();
    expect([work.searching, work.stopping]).toEqual([true, true]);
    expect(server.plan.mock.calls[0]?.[1]?.aborted).toBe(true);
    // It had run for three seconds: as long again.
    expect(asked(1)).toEqual({ ...visit, options: { seconds: 3 } });
    await vi.advanceTimersByTimeAsync(3000);
    expect(work.plan).toBe(best);
    expect([work.planIsCurrent, work.planIsStopped, work.searching, work.stopping]).toEqual([
      true,
      true,
      false,
      false,
    ]);

    void work.searchOn();
    expect(work.searching).toBe(true);
    await vi.advanceTimersByTimeAsync(9000);
    expect(asked(2)?.options?.seconds).toBe(600);
    expect(work.plan).toBe(whole);
    expect([work.planIsCurrent, work.planIsStopped, work.searching]).toEqual([true, false, false]);
    expect(server.plan).toHaveBeenCalledTimes(3);
  });

  it.each([
    [100, 2],
    [30_000, 6],
  ])('is asked for a time that is not too short nor too long: after %i ms for %i s', async (ran, seconds) => {
    takes(60_000, whole);
    takes(100, whole);
    const work = new Work(saved(visit));
    void work.planNow();
    await vi.advanceTimersByTimeAsync(ran);
    void work.stopHere();
    await vi.advanceTimersByTimeAsync(100);
    expect(asked(1)?.options?.seconds).toBe(seconds);
    // Found to the end before the time was over: nothing is left open.
    expect(work.plan).toBe(whole);
    expect(work.planIsStopped).toBe(false);
  });

  it('counts as stopped where the bowls are the best but the time was over for other ways', async () => {
    takes(60_000, whole);
    takes(2000, whole);
    const work = new Work(saved(visit));
    void work.planNow();
    void work.stopHere();
    await vi.advanceTimersByTimeAsync(2000);
    expect(work.planIsStopped).toBe(true);
  });

  it('stays stopped until it goes on or the document changes', async () => {
    takes(100, answer('cancelled', 2));
    const work = new Work(saved(visit));
    void work.planNow();
    await vi.advanceTimersByTimeAsync(100);
    expect(work.planIsStopped).toBe(true);
    await work.planNow();
    expect(server.plan).toHaveBeenCalledTimes(1);
    expect(work.planIsStopped).toBe(true);
    work.change(read(50));
    expect(work.planIsStopped).toBe(false);
    takes(100, whole);
    void work.planNow();
    await vi.advanceTimersByTimeAsync(100);
    expect([work.plan === whole, work.planIsStopped]).toEqual([true, false]);
  });

  it('that cannot be had says so', async () => {
    takes(60_000, whole);
    server.plan.mockRejectedValueOnce(new Away());
    const work = new Work(saved(visit));
    void work.planNow();
    await vi.advanceTimersByTimeAsync(100);
    await work.stopHere();
    expect(work.planTrouble).toEqual({ away: true });
    expect([work.searching, work.stopping]).toEqual([false, false]);
  });

  it('does nothing where none is under way', async () => {
    const work = new Work(saved(visit));
    await work.stopHere();
    expect(server.plan).not.toHaveBeenCalled();
  });
});
