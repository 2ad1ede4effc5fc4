import { expect, it, vi } from 'vitest';
import { handedIn, leave } from './leaving';

it('waits for a visit that was left, once, and for no other', async () => {
  let end = () => undefined as void;
  const close = () => new Promise<void>((go) => (end = go));
  const rest = vi.fn(() => Promise.resolve());
  leave('a', { close, rest });
  const seen: string[] = [];
  const waits = handedIn('a').then(() => seen.push('a'));
  await handedIn('b');
  expect([seen, rest.mock.calls.length]).toEqual([[], 0]);
  end();
  await waits;
  await handedIn('a');
  expect(rest).toHaveBeenCalledTimes(1);
});
