import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { watchIdle } from './idle';

describe('a page that nobody touches', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('is left after its minutes, once', () => {
    const left = vi.fn();
    watchIdle(30, left);
    vi.advanceTimersByTime(29 * 60_000);
    expect(left).not.toHaveBeenCalled();
    dispatchEvent(new Event('pointerdown'));
    vi.advanceTimersByTime(29 * 60_000);
    expect(left).not.toHaveBeenCalled();
    vi.advanceTimersByTime(2 * 60_000);
    expect(left).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(60 * 60_000);
    expect(left).toHaveBeenCalledTimes(1);
  });

  it('is left as soon as it is seen again after a sleep', () => {
    const left = vi.fn();
    watchIdle(30, left);
    vi.setSystemTime(Date.now() + 40 * 60_000);
    document.dispatchEvent(new Event('visibilitychange'));
    expect(left).toHaveBeenCalledTimes(1);
  });

  it('is not left while a clock runs, and from then on counts anew', () => {
    const left = vi.fn();
    let running = true;
    watchIdle(30, left, () => running);
    vi.advanceTimersByTime(90 * 60_000);
    expect(left).not.toHaveBeenCalled();
    running = false;
    vi.advanceTimersByTime(29 * 60_000);
    expect(left).not.toHaveBeenCalled();
    vi.advanceTimersByTime(2 * 60_000);
    expect(left).toHaveBeenCalledTimes(1);
  });

  it('is not left once nobody watches', () => {
    const left = vi.fn();
    watchIdle(1, left)();
    vi.advanceTimersByTime(10 * 60_000);
    expect(left).not.toHaveBeenCalled();
  });
});
