import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Away, Refused } from '../api/client';
import * as api from '../api/facts';
import { waiting } from '../offline/drafts';
import { Facts } from './facts.svelte';

vi.mock('../api/facts');
vi.mock('../offline/drafts', () => ({ waiting: { keep: vi.fn(), read: vi.fn() } }));
const server = vi.mocked(api);

beforeEach(() => {
  vi.resetAllMocks();
  server.factsOf.mockResolvedValue([]);
  server.tellFact.mockImplementation((_, fact) =>
    Promise.resolve({ ...fact, store_seq: 1, visit_id: 'v', seq: 1, version: 1 } as api.Fact),
  );
});

describe('what happened', () => {
  it('is kept on the device while the server is silent, and handed over once, under the same id', async () => {
    server.tellFact.mockRejectedValueOnce(new Away());
    const facts = new Facts('v');
    await facts.tell('stopped', { kind: 'sting' });
    expect(facts.trouble).toEqual({ away: true });
    expect(vi.mocked(waiting.keep).mock.lastCall?.[1]).toHaveLength(1);
    expect(facts.last('stopped')?.body.kind).toBe('sting');
    await facts.again();
    expect(facts.waits).toEqual([]);
    expect(facts.kept).toHaveLength(1);
    const ids = server.tellFact.mock.calls.map(([, fact]) => fact.id);
    expect(ids[0]).toBe(ids[1]);
  });

  it('that was left on the device by an earlier page is handed over when it opens', async () => {
    vi.mocked(waiting.read).mockResolvedValue([{ id: 'left', kind: 'stopped', body: { kind: 'heat' } }]);
    const facts = new Facts('v');
    await facts.load();
    expect(server.tellFact).toHaveBeenCalledTimes(1);
    expect(facts.last('stopped')?.id).toBe('left');
  });

  it('and was refused is told of and stays until a person lets it go', async () => {
    server.tellFact.mockRejectedValue(
      new Refused(422, [{ code: 'left_empty', path: '/body/why', params: {} }]),
    );
    const facts = new Facts('v');
    await facts.tell('stopped', { kind: 'sting' });
    expect(facts.trouble).toMatchObject({ away: false });
    expect(facts.waits).toHaveLength(1);
    await facts.letGo();
    expect(facts.waits).toEqual([]);
  });
});
