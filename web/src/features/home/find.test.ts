import { describe, expect, it } from 'vitest';
import type { VisitLine } from '../../api/visits';
import { offered, visitsOf } from './find';

const line = (id: string, client: string): VisitLine => ({
  id,
  seq: 1,
  client,
  date: '',
  opened_at: '',
  changed_at: '',
});
const many = Array.from({ length: 12 }, (_, i) => line(`v${i}`, `Client ${i}`));
const visits = [...many, line('old', 'Édith M.'), line('older', 'Edith M.')];
const ids = (list: VisitLine[]) => list.map((v) => v.id);

describe('an earlier visit to start from', () => {
  it('is found by the name, however far back, without accents and capitals', () => {
    expect(ids(visitsOf(visits, ' edith'))).toEqual(['old', 'older']);
    expect(ids(offered(visits, 'EDITH m', ''))).toEqual(['old', 'older']);
  });

  it('is one of the latest where no client has that name', () => {
    const latest = ['v0', 'v1', 'v2', 'v3', 'v4'];
    expect(ids(offered(visits, '', ''))).toEqual(latest);
    expect(ids(offered(visits, 'Somebody new', ''))).toEqual(latest);
  });

  it('stays offered once it is chosen', () => {
    expect(ids(offered(visits, '', 'old'))).toEqual(['old', 'v0', 'v1', 'v2', 'v3']);
    expect(ids(offered(visits, '', 'v3'))).toEqual(['v0', 'v1', 'v2', 'v3', 'v4']);
    expect(ids(offered(visits, '', 'gone'))).toHaveLength(5);
  });
});
