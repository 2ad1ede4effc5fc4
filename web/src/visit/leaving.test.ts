import { expect, it, vi } from 'vitest';
import { handedIn, leave } from './leaving';

it('waits for a visit that was left, once, and for no other', async () => {
  let end = () => undefined as void;
  const close = () => new Promise<void>((go) => (end = go));
  const rest = vi.fn(() => Promise.resolve());
  leave('a', { saving: 'waiting', close, rest });
  const seen: string[] = [];
  const waits = handedIn('a').then(() => seen.push('a'));
  await handedIn('b');
  expect([seen, rest.mock.calls.length]).toEqual([[], 0]);
  end();
  await waits;
  await handedIn('a');
  expect(rest).toHaveBeenCalledTimes(1);
});

it('forgets a visit that is handed in, and keeps one that is not', async () => {
  for (const [saving, rests] of [
    ['saved', 0],
    ['waiting', 1],
  ] as const) {
    const rest = vi.fn(() => Promise.resolve());
    leave('a', { saving, close: () => Promise.resolve(), rest });
    await new Promise((go) => setTimeout(go));
    await handedIn('a');
    expect(rest, saving).toHaveBeenCalledTimes(rests);
  }
});
