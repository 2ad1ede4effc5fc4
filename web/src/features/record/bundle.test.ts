import { describe, expect, it } from 'vitest';
import type { Fact } from '../../api/facts';
import type { StockMove } from '../../api/stock';
import type { Visit } from '../../api/types';
import { bundleOf } from './bundle';

describe('all that is kept of a visit', () => {
  const fact = (kind: string, body: unknown, seq: number) =>
    ({
      ...{ id: `f${seq}`, kind, store_seq: seq, visit_id: 'v', seq },
      ...{ made_at: '2026-03-10T10:00:00Z', version: 1, body },
    }) as Fact;
  const words = { title: 'Q & R', language: 'en', kind: (k: string) => k, batches: 'batches', head: 'visit' };
  it('holds each fact, each picture and each batch, and no mark-up of anybody', () => {
    const moves = [
      { id: 'm', at: '2026-03-10T10:00:00Z', what: 'use', grams: 20, lots: [{ batch: 'L 77' }] },
    ];
    const text = bundleOf(
      words,
      { client: '<b>Q</b>' } as Visit,
      [
        fact('gate.answered', { answers: { age: 'adult' } }, 1),
        fact('photo', { of: 'after', jpeg: '/9j/4AAQ' }, 2),
        fact('result', { zones: [], said: '<script>alert(1)</script>' }, 3),
        fact('comfort', undefined, 4),
        fact('visit.handed_in', { document: {} }, 5),
      ],
      moves as unknown as StockMove[],
    );
    expect(text).toContain('<title>Q &amp; R</title>');
    expect(text).toContain('<th>age</th><td>adult</td>');
    expect(text).toContain('src="data:image/jpeg;base64,/9j/4AAQ"');
    expect(text).toContain('L 77');
    expect(text).not.toContain('<script>');
    expect(text).not.toContain('<b>Q</b>');
    const page = new DOMParser().parseFromString(text, 'text/html');
    expect([...page.querySelectorAll('h2')].map((h) => h.textContent)).toEqual([
      ...['gate.answered', 'photo', 'result', 'comfort', 'batches', 'visit'],
    ]);
  });
});
