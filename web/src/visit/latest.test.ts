import { describe, expect, it, vi } from 'vitest';
import { Latest, Newest } from './latest';

const soon = () => new Promise((resolve) => setTimeout(resolve));

/** Turns that end when told to. */
function held() {
  const begun: number[] = [];
  const ends: (() => void)[] = [];
  const turn = (n: number) => async () => {
    begun.push(n);
    await new Promise<void>((resolve) => ends.push(resolve));
  };
  return { begun, turn, end: () => ends.shift()?.() };
}

describe('one turn at a time', () => {
  it('runs the newest next and drops those between', async () => {
    const { begun, turn, end } = held();
    const newest = new Newest();
    const all = [1, 2, 3, 4].map((n) => newest.run(turn(n)));
    expect(begun).toEqual([1]);
    end();
    await soon();
    expect(begun).toEqual([1, 4]);
    end();
    await Promise.all(all);
    expect(begun).toEqual([1, 4]);
    void newest.run(turn(5));
    expect(begun).toEqual([1, 4, 5]);
  });

  it('tells the turn under way when it is stopped and starts afresh', async () => {
    const newest = new Newest();
    let told = false;
    const first = newest.run(
      (signal) =>
        new Promise((resolve) =>
          signal.addEventListener('abort', () => {
            told = true;
            resolve();
          }),
        ),
    );
    const { begun, turn, end } = held();
    void newest.run(turn(1));
    newest.stop();
    await first;
    expect(told).toBe(true);
    expect(begun).toEqual([]);
    const next = newest.run(turn(2));
    end();
    await next;
    expect(begun).toEqual([2]);
  });

  it('hands on what a turn throws and can go on', async () => {
    const newest = new Newest();
    await expect(newest.run(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
    const { begun, turn, end } = held();
    const next = newest.run(turn(1));
    end();
    await next;
    expect(begun).toEqual([1]);
  });
});

describe('the latest question', () => {
  it('is the only one that is answered', async () => {
    vi.useFakeTimers();
    const latest = new Latest<number>();
    const answers: (number | undefined)[] = [];
    const ask = (value: number, wait: number) =>
      latest
        .run(
          (signal) => new Promise((resolve) => setTimeout(() => resolve(signal.aborted ? -1 : value), wait)),
        )
        .then((answer) => answers.push(answer));
    const first = ask(1, 100);
    const second = ask(2, 10);
    await vi.advanceTimersByTimeAsync(200);
    await Promise.all([first, second]);
    expect(answers).toEqual([2, undefined]);
    vi.useRealTimers();
  });
});
