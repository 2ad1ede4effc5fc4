import { beforeEach, describe, expect, it, vi } from 'vitest';
import * as facts from '../../api/facts';
import * as api from '../../api/visits';
import type { VisitLine } from '../../api/visits';
import { isPart, offers, withChosen } from './find';

vi.mock('../../api/visits');
vi.mock('../../api/facts');
const server = vi.mocked(api);

const line = (id: string, client: string): VisitLine => ({
  id,
  seq: 1,
  client,
  date: '',
  opened_at: '',
  changed_at: '',
});
const latest = Array.from({ length: 5 }, (_, i) => line(`v${i}`, `Client ${i}`));
const old = line('old', 'Édith M.');
const ids = (list: VisitLine[]) => list.map((v) => v.id);

beforeEach(() => {
  vi.resetAllMocks();
  vi.mocked(facts).findClients.mockImplementation((find) =>
    Promise.resolve(
      find === 'zo'
        ? [{ id: 'p', name: 'Zoë', visits: 2, last_visit: 'ended', last_date: '2026-03-10' }]
        : [],
    ),
  );
  server.listVisits.mockImplementation((asked) =>
    Promise.resolve({ visits: !asked?.find ? latest : asked.find === 'edith' ? [old] : [] }),
  );
});

describe('an earlier visit to start from', () => {
  it('is looked for on the server, which knows all of them', async () => {
    expect(ids(await offers(' edith'))).toEqual(['old']);
    expect(server.listVisits).toHaveBeenCalledWith({ find: 'edith', limit: 5 }, undefined);
  });

  it('is one of the latest where no client has that name', async () => {
    expect(ids(await offers(''))).toEqual(ids(latest));
    expect(ids(await offers('Somebody new'))).toEqual(ids(latest));
  });

  it('is the newest that was handed in, with whose it is', async () => {
    expect(await offers('zo')).toMatchObject([{ id: 'ended', client: 'Zoë', person: 'p' }]);
  });

  it('stays offered once it is chosen', () => {
    expect(ids(withChosen(latest, old))).toEqual(['old', 'v0', 'v1', 'v2', 'v3']);
    expect(ids(withChosen(latest, latest[3]))).toEqual(ids(latest));
    expect(ids(withChosen(latest))).toEqual(ids(latest));
  });

  it('may be found by a part of the name', () => {
    expect(isPart('edith', 'Édith M.')).toBe(true);
    expect(isPart(' EDITH m', 'Édith M.')).toBe(true);
    expect(isPart('Judith', 'Édith M.')).toBe(false);
  });
});
