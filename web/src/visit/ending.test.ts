import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Away, Refused } from '../api/client';
import * as api from '../api/facts';
import { endings } from '../offline/drafts';
import { Ending, type Endable } from './ending.svelte';
import { saved, visit } from './test-visit';

vi.mock('../api/facts');
vi.mock('../offline/drafts', () => ({ endings: { keep: vi.fn(), read: vi.fn(), drop: vi.fn() } }));
const server = vi.mocked(api);
const store = vi.mocked(endings);

const fact = { id: 'f', kind: 'stopped', body: { kind: 'sting' } } as api.NewFact;
const asked = { entry: 'left', facts: [fact] };
const answer = { ...saved(visit), handed_in_at: '2026-03-09T12:00:00Z' };

interface Open extends Endable {
  saving: string;
  storedSeq: number;
  facts: { again(): Promise<void>; trouble: Endable['saveTrouble'] };
}
const open = (saving = 'saved') => {
  const save = vi.fn(() => Promise.resolve());
  const again = vi.fn(() => Promise.resolve());
  const ended = vi.fn();
  const facts = { again, trouble: undefined as Endable['saveTrouble'] };
  return { id: 'v', storedSeq: 3, saving, saveTrouble: undefined, save, facts, ended } satisfies Open;
};

beforeEach(() => {
  vi.useFakeTimers();
  vi.resetAllMocks();
  store.keep.mockResolvedValue(true);
  store.read.mockResolvedValue(undefined);
  server.handIn.mockResolvedValue(answer);
});

describe('the end of a visit', () => {
  it('waits on the device while the server is silent and comes by itself, as one entry', async () => {
    server.handIn.mockRejectedValueOnce(new Away());
    const work = open();
    const ending = new Ending(work);
    expect(await ending.ask([fact])).toBe(false);
    expect(ending.trouble).toEqual({ away: true });
    expect(store.keep.mock.lastCall?.[1].facts).toEqual([fact]);
    work.storedSeq = 5; // a mark was stored meanwhile
    await vi.advanceTimersByTimeAsync(3500);
    expect(work.ended).toHaveBeenCalledWith(answer.handed_in_at);
    const [first, second] = server.handIn.mock.calls.map(([, one]) => one);
    expect(second).toEqual({ ...first, seq: 5 });
    expect(store.drop).toHaveBeenCalledWith('v');
    expect(ending.waits).toBeUndefined();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(server.handIn).toHaveBeenCalledTimes(2);
  });

  it('that an earlier page left is asked under its own entry', async () => {
    store.read.mockResolvedValue(asked);
    const work = open();
    await new Ending(work).load();
    expect(server.handIn).toHaveBeenCalledWith('v', { ...asked, seq: 3 });
    expect(work.save).not.toHaveBeenCalled(); // an ended visit takes no change
    expect(work.ended).toHaveBeenCalledTimes(1);
  });

  it('comes after the last change and after what happened', async () => {
    const work = open('waiting');
    const ending = new Ending(work);
    expect(await ending.ask([fact])).toBe(false);
    expect(work.save).toHaveBeenCalledTimes(1);
    work.saving = 'saved';
    work.facts.trouble = { away: true };
    expect(await ending.again()).toBe(false);
    expect(server.handIn).not.toHaveBeenCalled();
    work.facts.trouble = undefined;
    expect(await ending.again()).toBe(true);
  });

  it('that another device reached is told and kept until a person settles it', async () => {
    const problem = { code: 'visit_handed_in', path: '', params: {} };
    server.handIn.mockRejectedValue(new Refused(409, [problem]));
    const work = open();
    const ending = new Ending(work);
    await ending.ask([fact]);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(server.handIn).toHaveBeenCalledTimes(1);
    expect(ending.trouble).toEqual({ away: false, problems: [problem] });
    expect(ending.waits?.facts).toEqual([fact]);
    expect(store.drop).not.toHaveBeenCalled();
    await ending.letGo();
    expect(store.drop).toHaveBeenCalledWith('v');
    expect(work.ended).not.toHaveBeenCalled();
  });

  it('is left to the next page once this one rests', async () => {
    server.handIn.mockRejectedValue(new Away());
    const ending = new Ending(open());
    await ending.ask([fact]);
    await ending.rest();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(server.handIn).toHaveBeenCalledTimes(1);
    expect(store.drop).not.toHaveBeenCalled();
  });
});
