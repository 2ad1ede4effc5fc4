import { afterEach, describe, expect, it, vi } from 'vitest';
import { cameIn, door } from '../offline/door.svelte';
import { server } from '../offline/server.svelte';
import { Away, call, Refused } from './client';

const answers = (status: number, code: string) =>
  vi.stubGlobal(
    'fetch',
    async () => new Response(JSON.stringify({ problems: [{ code, path: '', params: {} }] }), { status }),
  );

const ada = { id: 'a', name: 'Ada', roles: ['colourist' as const], here: true, pin: false };

describe('a request', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    door.shut = false;
    door.person = undefined;
  });

  it('that nobody is signed in for locks the page, and is one that waits', async () => {
    cameIn(ada);
    answers(401, 'not_signed_in');
    await expect(call('PUT', 'visits/1', {})).rejects.toBeInstanceOf(Away);
    expect(door.shut).toBe(true);
    expect(door.person?.name).toBe('Ada');
    expect(server.away).toBe(false);
  });

  it('with a wrong passphrase, or for another role, is refused and locks nothing', async () => {
    for (const [status, code] of [
      [401, 'wrong_secret'],
      [403, 'not_your_role'],
    ] as const) {
      answers(status, code);
      await expect(call('POST', 'door/sign-in', {})).rejects.toBeInstanceOf(Refused);
      expect(door.shut).toBe(false);
    }
  });
});

describe('what was open', () => {
  afterEach(() => {
    door.shut = false;
    door.person = undefined;
  });

  it('is still open for who left it, and for nobody else', () => {
    cameIn(ada);
    location.hash = '#/visits/7/plan';
    door.shut = true;
    cameIn({ ...ada });
    expect(location.hash).toBe('#/visits/7/plan');
    door.shut = true;
    cameIn({ ...ada, id: 'b', name: 'Bo' });
    expect(location.hash).toBe('#/');
  });
});
