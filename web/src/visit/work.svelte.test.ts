import { flushSync } from 'svelte';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Away, Refused } from '../api/client';
import type { Visit } from '../api/types';
import * as api from '../api/visits';
import type { Draft, Drafts } from '../offline/drafts';
import { hand } from '../ui/hand.svelte';
import { notify, toasts } from '../ui/toasts.svelte';
import { read, saved, visit } from './test-visit';
import { Work } from './work.svelte';

vi.mock('../api/visits');
const server = vi.mocked(api);

beforeEach(() => {
  vi.useFakeTimers();
  vi.resetAllMocks();
  server.assess.mockResolvedValue({ schema: 'strandline.assess/1', zones: [], notes: [] });
  server.aim.mockResolvedValue({ schema: 'strandline.aim/1', targets: [] });
  server.saveVisit.mockImplementation((_, seq, document) => Promise.resolve(saved(document, seq + 1)));
});

/** The server stores nothing before its answers are let go, one by one. */
function slowToStore(): (() => void)[] {
  const answers: (() => void)[] = [];
  server.saveVisit.mockImplementation(
    (_, seq, document) => new Promise((resolve) => answers.push(() => resolve(saved(document, seq + 1)))),
  );
  return answers;
}

describe('an open visit', () => {
  it('is read at once and stored once things are quiet, with the entry it has seen', async () => {
    const work = new Work(saved(visit, 4));
    work.change(read(10));
    work.change(read(20));
    expect(work.saving).toBe('waiting');
    await vi.advanceTimersByTimeAsync(500);
    expect(server.assess).toHaveBeenCalledTimes(2);
    expect(server.saveVisit).toHaveBeenCalledTimes(1);
    expect(server.saveVisit.mock.calls[0]?.[1]).toBe(4);
    expect(work.saving).toBe('saved');
    work.change(read(30));
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit.mock.lastCall?.[1]).toBe(5);
  });

  it('asks what is in reach once per head, and anew for another one', async () => {
    server.reach.mockResolvedValue({ schema: 'strandline.reach/1', go: 'go', verdicts: [], zones: [] });
    const work = new Work(saved(visit, 4));
    await work.reachNow();
    work.change({ ...visit, aims: [{ zone: '*', level: 6 }] });
    await work.reachNow();
    expect(server.reach).toHaveBeenCalledTimes(1);
    work.change(read(30));
    expect(work.reach).toBeUndefined();
    await work.reachNow();
    expect(server.reach).toHaveBeenCalledTimes(2);
    server.reach.mockRejectedValue(new Away());
    work.change(read(40));
    await work.reachNow();
    expect(work.reachTrouble).toEqual({ away: true });
  });

  it('leaves the wishes of a head that is being read for a quiet moment', async () => {
    const aims = [{ zone: '*', level: 6 }];
    const work = new Work(saved({ ...visit, aims }, 4));
    for (const white of [10, 20, 30]) work.change({ ...read(white), aims });
    expect(server.aim).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(500);
    expect(server.aim).toHaveBeenCalledTimes(1);
  });

  it('waits for one answer before it stores the next change', async () => {
    const answers = slowToStore();
    const work = new Work(saved(visit, 4));
    work.change(read(10));
    await vi.advanceTimersByTimeAsync(500);
    work.change(read(20));
    await vi.advanceTimersByTimeAsync(5000);
    expect(server.saveVisit).toHaveBeenCalledTimes(1);
    answers[0]?.();
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit).toHaveBeenCalledTimes(2);
    expect(server.saveVisit.mock.lastCall?.slice(1, 3)).toEqual([5, read(20)]);
    answers[1]?.();
    await vi.advanceTimersByTimeAsync(500);
    expect(work.saving).toBe('saved');
  });

  it('takes back one change after another, and what ran under one hand at once', () => {
    const work = new Work(saved(visit, 4));
    expect(work.canUndo).toBe(false);
    work.change(read(10));
    hand.hold();
    for (const white of [20, 30, 40]) work.change(read(white));
    hand.release();
    expect(work.visit).toEqual(read(40));
    work.undo();
    expect(work.visit).toEqual(read(10));
    const back = work.change(read(50));
    work.change(read(60));
    back();
    expect(work.visit, 'all down to before that change').toEqual(read(10));
    work.undo();
    expect([work.visit, work.canUndo]).toEqual([visit, false]);
    work.undo();
    expect(work.visit).toEqual(visit);
  });

  it('is asked about while a value is held, and laid down once the hand lets go', async () => {
    const keep = vi.fn(() => Promise.resolve(true));
    const drafts = { keep, read: () => Promise.resolve(undefined), drop: () => Promise.resolve() };
    const work = new Work(saved(visit, 4), drafts);
    hand.hold();
    for (const white of [10, 20, 30]) {
      work.change(read(white));
      await vi.advanceTimersByTimeAsync(500);
    }
    expect(server.assess).toHaveBeenCalledTimes(3);
    expect([work.saving, server.saveVisit.mock.calls.length, keep.mock.calls.length]).toEqual([
      'waiting',
      0,
      0,
    ]);
    hand.release();
    expect(keep).toHaveBeenCalledWith('v1', expect.objectContaining({ seq: 4, document: read(30) }));
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit.mock.calls.map(([, , document]) => document)).toEqual([read(30)]);
    expect(work.saving).toBe('saved');
  });

  it('under a hand is the newest for whoever asks, and is told of to screens once it lets go', () => {
    const work = new Work(saved(visit, 4));
    const seen: Visit[] = [];
    const end = $effect.root(() => {
      $effect(() => void seen.push(work.visit));
    });
    flushSync();
    hand.hold();
    for (const white of [10, 20]) {
      work.change(read(white));
      flushSync();
      expect(work.visit).toEqual(read(white));
    }
    hand.release();
    flushSync();
    expect(seen).toEqual([visit, read(20)]);
    end();
  });

  it('that is closed under a hand is stored once', async () => {
    const work = new Work(saved(visit, 4));
    hand.hold();
    work.change(read(10));
    void work.close();
    hand.release();
    await vi.advanceTimersByTimeAsync(1000);
    expect(server.saveVisit).toHaveBeenCalledTimes(1);
  });

  it('that is closed ends when its last change is handed in', async () => {
    const answers = slowToStore();
    const work = new Work(saved(visit, 4));
    work.change(read(10));
    await vi.advanceTimersByTimeAsync(500);
    work.change(read(20)); // the one before is still on its way
    let ended = false;
    void work.close().then(() => (ended = true));
    answers[0]?.();
    await vi.advanceTimersByTimeAsync(0);
    expect(server.saveVisit.mock.lastCall?.slice(1, 3)).toEqual([5, read(20)]);
    expect(ended).toBe(false);
    answers[1]?.();
    await vi.advanceTimersByTimeAsync(5000);
    expect(ended).toBe(true);
    expect(server.saveVisit).toHaveBeenCalledTimes(2);
  });

  it('that is closed with the server gone leaves its draft here and goes on trying until it rests', async () => {
    server.saveVisit.mockRejectedValue(new Away());
    const keep = vi.fn(() => Promise.resolve(true));
    const drafts = { keep, read: () => Promise.resolve(undefined), drop: () => Promise.resolve() };
    const work = new Work(saved(visit, 4), drafts);
    hand.hold();
    work.change(read(10));
    await work.close();
    hand.release();
    expect(keep.mock.calls).toEqual([['v1', expect.objectContaining({ seq: 4, document: read(10) })]]);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(server.saveVisit).toHaveBeenCalledTimes(4);
    await work.rest();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(server.saveVisit).toHaveBeenCalledTimes(4);
  });

  it('gives a way back', async () => {
    const work = new Work(saved(visit));
    const back = work.change(read(40));
    back();
    expect(work.visit).toEqual(visit);
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit.mock.lastCall?.[2]).toEqual(visit);
  });

  it('takes back only what was done last: an older way back would take newer work with it', () => {
    const work = new Work(saved(visit));
    notify('woven', work.change(read(10)));
    expect(toasts.map((note) => note.text)).toEqual(['woven']);
    work.change(read(20));
    expect(toasts).toEqual([]);
  });

  it('tries again while the server is silent and loses nothing', async () => {
    server.saveVisit.mockRejectedValueOnce(new Away()).mockRejectedValueOnce(new Away());
    const work = new Work(saved(visit));
    work.change(read(40));
    await vi.advanceTimersByTimeAsync(500);
    expect(work.saving).toBe('waiting');
    await vi.advanceTimersByTimeAsync(7000);
    expect(work.saving).toBe('saved');
    expect(server.saveVisit.mock.lastCall?.[2]).toEqual(read(40));
  });

  it('never overwrites what another device stored', async () => {
    server.saveVisit.mockRejectedValue(
      new Refused(409, [{ code: 'visit_changed_elsewhere', path: '', params: {} }]),
    );
    server.openVisit.mockRejectedValueOnce(new Away()).mockResolvedValue(saved(visit, 2));
    const work = new Work(saved(visit));
    work.change(read(40));
    await vi.advanceTimersByTimeAsync(500);
    expect(work.saving).toBe('waiting'); // whose the newest entry is was not answered
    server.saveVisit.mockClear();
    await vi.advanceTimersByTimeAsync(20_000);
    expect(work.saving).toBe('changed_elsewhere');
    expect(server.saveVisit).toHaveBeenCalledTimes(1);
  });

  it('hands a save whose answer was lost in again under its id', async () => {
    server.saveVisit.mockRejectedValueOnce(new Away());
    const work = new Work(saved(visit, 4));
    work.change(read(40));
    await vi.advanceTimersByTimeAsync(5000);
    const [first, second] = server.saveVisit.mock.calls;
    expect(second).toEqual(first);
    work.change(read(50));
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit.mock.lastCall?.[3]).not.toBe(first?.[3]);
  });

  it('goes on when what came before it was its own save whose answer was lost', async () => {
    const stored: [number, Visit, string][] = [];
    let lose = true;
    server.saveVisit.mockImplementation((_, seq, document, entry) => {
      if (seq !== 4 + stored.length) return Promise.reject(new Refused(409, []));
      stored.push([seq, document, entry]);
      if (!lose) return Promise.resolve({ ...saved(document, seq + 1), entry });
      lose = false;
      return Promise.reject(new Away());
    });
    server.openVisit.mockImplementation(() => {
      const [seq, document, entry] = stored.at(-1)!;
      return Promise.resolve({ ...saved(document, seq + 1), entry });
    });
    const work = new Work(saved(visit, 4));
    work.change(read(40));
    await vi.advanceTimersByTimeAsync(500);
    work.change(read(50)); // before anybody knows whether the first is stored
    await vi.advanceTimersByTimeAsync(5000);
    expect(stored.map(([, document]) => document)).toEqual([read(40), read(50)]);
    expect(work.saving).toBe('saved');
  });

  it('tries again when the server could not store, too', async () => {
    server.saveVisit.mockRejectedValueOnce(
      new Refused(503, [{ code: 'store_unavailable', path: '', params: {} }]),
    );
    const work = new Work(saved(visit));
    work.change(read(40));
    await vi.advanceTimersByTimeAsync(500);
    expect(work.saving).toBe('refused');
    await vi.advanceTimersByTimeAsync(3500);
    expect(work.saving).toBe('saved');
  });

  it('tells what is wrong with a reading and keeps the last picture', async () => {
    const work = new Work(saved(visit));
    await work.assessNow();
    const before = work.assessment;
    server.assess.mockRejectedValueOnce(
      new Refused(422, [{ code: 'level_out_of_range', path: '', params: {} }]),
    );
    await work.assessNow();
    expect(work.assessTrouble).toEqual({
      away: false,
      problems: [{ code: 'level_out_of_range', path: '', params: {} }],
    });
    expect(work.assessment).toBe(before);
  });
});

describe('a draft', () => {
  function fakeDrafts() {
    const kept = new Map<string, Draft>();
    const drafts: Drafts = {
      keep: (id, draft) => Promise.resolve(Boolean(kept.set(id, draft))),
      read: (id) => Promise.resolve(kept.get(id)),
      drop: (id) => Promise.resolve(void kept.delete(id)),
    };
    return { kept, drafts };
  }

  it('lies on the device until the server has stored it', async () => {
    const { kept, drafts } = fakeDrafts();
    server.saveVisit.mockRejectedValueOnce(new Away());
    const work = new Work(saved(visit, 4), drafts);
    work.change(read(10));
    work.change(read(20));
    await vi.advanceTimersByTimeAsync(500);
    expect(work.kept).toBe(true);
    expect(kept.get('v1')).toMatchObject({ seq: 4, document: read(20) });
    await vi.advanceTimersByTimeAsync(5000);
    expect(work.saving).toBe('saved');
    expect(kept.size).toBe(0);
  });

  it('goes on where the page was closed', async () => {
    const { drafts } = fakeDrafts();
    const work = new Work(saved(visit, 4), drafts, { seq: 4, document: read(30) });
    expect(work.visit).toEqual(read(30));
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit.mock.lastCall?.slice(1, 3)).toEqual([4, read(30)]);
  });

  it('that the server has stored already is dropped without a question', async () => {
    const { kept, drafts } = fakeDrafts();
    const { head, ...rest } = read(30);
    const draft = { seq: 3, document: { head, ...rest } }; // the same in another order
    kept.set('v1', draft);
    const work = new Work(saved(read(30), 4), drafts, draft);
    expect(work.overtaken).toBeUndefined();
    await vi.advanceTimersByTimeAsync(1000);
    expect(kept.size).toBe(0);
    expect(server.saveVisit).not.toHaveBeenCalled();
  });

  it('that was stored without an answer is dropped, and one on top of it goes on', async () => {
    const { kept, drafts } = fakeDrafts();
    const draft = { seq: 3, document: read(30), entry: 'mine-2', handed: ['mine-1'] };
    kept.set('v1', draft);
    const other = { ...saved(read(20), 4), entry: 'mine-2' };
    expect(new Work(other, drafts, draft).visit).toEqual(read(20));
    expect(kept.size).toBe(0);
    const work = new Work({ ...saved(read(20), 4), entry: 'mine-1' }, drafts, draft);
    expect(work.overtaken).toBeUndefined();
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit.mock.lastCall?.slice(1)).toEqual([4, read(30), 'mine-2']);
  });

  it('that another device has overtaken waits for a person', async () => {
    const { kept, drafts } = fakeDrafts();
    const draft = { seq: 3, document: read(30) };
    kept.set('v1', draft);
    const work = new Work(saved(visit, 4), drafts, draft);
    expect(work.visit).toEqual(visit);
    await vi.advanceTimersByTimeAsync(5000);
    expect(server.saveVisit).not.toHaveBeenCalled();
    expect(kept.size).toBe(1);
    work.settle(true);
    await vi.advanceTimersByTimeAsync(500);
    expect(server.saveVisit.mock.lastCall?.slice(1, 3)).toEqual([4, read(30)]);
    expect(kept.size).toBe(0);
  });

  it('of a visit that runs stays on the device though it is stored, until it is handed in', async () => {
    const { kept, drafts } = fakeDrafts();
    const running = { since: '2026-03-09T10:00:00Z', bowls: [], plan: {} } as unknown as Visit['running'];
    const work = new Work(saved(visit, 4), drafts);
    work.change({ ...visit, running });
    await vi.advanceTimersByTimeAsync(5000);
    expect(work.saving).toBe('saved');
    const stored = kept.get('v1');
    expect(stored).toMatchObject({ clean: true, document: { running } });

    // With nobody there it opens from that, and has nothing to hand in.
    const calls = server.saveVisit.mock.calls.length;
    const alone = new Work({ id: 'v1', seq: stored!.seq, document: stored!.document }, drafts, stored);
    await vi.advanceTimersByTimeAsync(5000);
    expect([alone.saving, alone.visit.running]).toEqual(['saved', running]);
    expect(server.saveVisit.mock.calls.length).toBe(calls);

    // What another device made of it meanwhile is no conflict.
    const newer = { ...visit, running: { ...running!, leave_by: 90 } };
    const later = new Work(saved(newer, 9), drafts, stored);
    expect([later.overtaken, later.visit.running?.leave_by]).toEqual([undefined, 90]);
    await vi.advanceTimersByTimeAsync(1);
    expect(kept.get('v1')).toMatchObject({ seq: 9, clean: true });

    new Work({ ...saved(newer, 9), handed_in_at: '2026-03-09T12:00:00Z' }, drafts, kept.get('v1'));
    await vi.advanceTimersByTimeAsync(1);
    expect(kept.size).toBe(0);
  });
});
