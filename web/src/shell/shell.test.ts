import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseRoute, steps, visitHref } from './route.svelte';
import { readSettings } from './settings.svelte';

describe('routes', () => {
  it('read back what they write', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), fc.constantFrom(...steps), (id, step) => {
        fc.pre(!['.', '..'].includes(id));
        expect(parseRoute(visitHref(id, step))).toEqual({ page: 'visit', id, step });
      }),
    );
  });

  it('know the other pages and admit the unknown', () => {
    expect(parseRoute('')).toEqual({ page: 'home' });
    expect(parseRoute('#/kit')).toEqual({ page: 'kit' });
    expect(parseRoute('#/people')).toEqual({ page: 'people' });
    expect(parseRoute('#/visits/7/pay')).toEqual({ page: 'unknown', hash: '#/visits/7/pay' });
    expect(parseRoute('#/clients')).toEqual({ page: 'clients' });
    expect(parseRoute('#/clients/7')).toEqual({ page: 'client', id: '7' });
    expect(parseRoute('#/elsewhere').page).toBe('unknown');
  });
});

describe('settings', () => {
  it('survive anything found in storage', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const got = readSettings(text);
        expect(['system', 'light', 'dark']).toContain(got.theme);
        expect(['g', 'oz']).toContain(got.mass);
        expect(['percent', 'volumes']).toContain(got.strength);
      }),
    );
  });

  it('keep what was chosen', () => {
    expect(readSettings('{"theme":"dark","mass":"oz"}')).toEqual({
      theme: 'dark',
      mass: 'oz',
      strength: 'percent',
    });
  });
});
