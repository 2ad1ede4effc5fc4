import { flushSync } from 'svelte';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { calm, hand } from './hand.svelte';

afterEach(() => void vi.useRealTimers());

describe('a hand that holds a value', () => {
  it('lets what can wait come afterwards, of each owner the last', () => {
    const [first, last, other] = [vi.fn(), vi.fn(), vi.fn()];
    const owner = {};
    hand.afterwards(owner, first);
    expect(first, 'no hand, no waiting').toHaveBeenCalledTimes(1);
    hand.hold();
    hand.afterwards(owner, first);
    hand.afterwards(owner, last);
    hand.afterwards({}, other);
    expect(last).not.toHaveBeenCalled();
    hand.release();
    expect([first, last, other].map((f) => f.mock.calls.length)).toEqual([1, 1, 1]);
    hand.release();
    expect(last).toHaveBeenCalledTimes(1);
  });

  it('lets nothing wait any more once something else is done, by a key or by another finger', () => {
    for (const [what, otherwise, end] of [
      ['a key', () => dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter' })), () => undefined],
      ['a finger', () => hand.hold(), () => hand.release()],
    ] as const) {
      const [first, later] = [vi.fn(), vi.fn()];
      hand.hold();
      hand.afterwards({}, first);
      expect(first, what).not.toHaveBeenCalled();
      otherwise();
      expect(first, what).toHaveBeenCalledTimes(1);
      hand.afterwards({}, later);
      expect(later, what).toHaveBeenCalledTimes(1);
      hand.release();
      end();
      // The next hold is one again.
      hand.hold();
      expect(hand.held, what).toBe(true);
      hand.release();
    }
  });

  it('keeps what is calm as it was, and unasked, until a moment after it let go', () => {
    vi.useFakeTimers();
    let value = $state(1);
    const asked = vi.fn(() => value);
    let followed: { readonly now: number };
    const seen: number[] = [];
    const end = $effect.root(() => {
      followed = calm(asked);
      $effect(() => void seen.push(followed.now));
    });
    flushSync();
    hand.hold();
    for (const next of [2, 3, 5]) {
      value = next;
      flushSync();
    }
    hand.release();
    value = 8;
    flushSync();
    expect(asked).toHaveBeenCalledTimes(1);
    vi.runAllTimers();
    flushSync();
    expect(seen).toEqual([1, 8]);
    value = 9;
    flushSync();
    expect(seen, 'it follows again').toEqual([1, 8, 9]);
    end();
  });
});
