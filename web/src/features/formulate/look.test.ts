import { afterEach, describe, expect, it, vi } from 'vitest';
import type { AlternativeView } from '../../api/types';
import { newVisit } from '../../visit/head';
import { Look } from './look.svelte';

const bowl = {
  label: 'A',
  range: 'r',
  parts: [{ product: 'p', name: 'P', grams: 12 }],
  minutes: 30,
  damp_hair: false,
  zones: ['top/regrowth'],
};
const way = { axis: 'gentler', bowls: [bowl] } as unknown as AlternativeView;
const visit = newVisit('A. B.', '2026-03-09');
afterEach(() => vi.unstubAllGlobals());

describe('looking at another way', () => {
  it('asks what its bowls do and leaves the visit alone', async () => {
    let sent: { bowls: unknown[] } | undefined;
    vi.stubGlobal('fetch', (_: string, { body }: { body: string }) => {
      sent = JSON.parse(body) as typeof sent;
      return Promise.resolve(new Response('{"bowls":[],"zones":[],"timeline":{"finish_min":90}}'));
    });
    const look = new Look();
    const seen = look.see(visit, way);
    expect(look.way).toBe(way);
    expect(look.plan).toBeUndefined();
    await seen;
    expect(look.plan?.timeline.finish_min).toBe(90);
    expect(sent?.bowls).toEqual([
      {
        label: 'A',
        range: 'r',
        parts: [{ product: 'p', grams: 12 }],
        minutes: 30,
        damp_hair: false,
        zones: ['top/regrowth'],
      },
    ]);
    expect(visit.bowls).toBeUndefined();
    look.back();
    expect([look.way, look.plan]).toEqual([undefined, undefined]);
  });

  it('says when it could not be worked out, and shows nothing half', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('gone')));
    const look = new Look();
    await look.see(visit, way);
    expect(look.plan).toBeUndefined();
    expect(look.trouble).toEqual({ away: true });
  });

  it('forgets an answer that comes after the plan is back', async () => {
    let answer: (r: Response) => void = () => undefined;
    vi.stubGlobal('fetch', () => new Promise<Response>((resolve) => (answer = resolve)));
    const look = new Look();
    const seen = look.see(visit, way);
    look.back();
    answer(new Response('{"zones":[]}'));
    await seen;
    expect(look.plan).toBeUndefined();
    expect(look.trouble).toBeUndefined();
  });
});
