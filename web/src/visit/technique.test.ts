import { expect, it } from 'vitest';
import type { Head, Running, ShelfAnswer, TimelineTask } from '../api/types';
import { techniqueOf, techniques } from './technique';

const head = {
  areas: [
    {
      id: 'top',
      spans: [
        { id: 'regrowth', to_cm: 2 },
        { id: 'mids', from_cm: 2, to_cm: 20 },
      ],
    },
    { id: 'weave', woven: {}, spans: [{ id: 'all', to_cm: 20 }] },
  ],
} as unknown as Head;
const running = {
  bowls: [
    { label: 'A', range: 'a' },
    { label: 'B', range: 'b' },
  ],
} as unknown as Running;
const shelf = {
  ranges: [
    { id: 'a', cls: 'permanent' },
    { id: 'b', cls: 'lightener' },
  ],
} as unknown as ShelfAnswer;
const apply = (zone: string, bowl = 'A') => ({ kind: 'apply', zone, bowl }) as TimelineTask;

it('names what hands do where', () => {
  const of = (task: TimelineTask) => techniqueOf(task, running, head, shelf);
  expect(of(apply('top/regrowth'))).toBe('colour-regrowth');
  expect(of(apply('top/mids'))).toBe('colour-lengths');
  expect(of(apply('weave/all', 'B'))).toBe('lighten-packets');
  expect(of({ kind: 'rinse' } as TimelineTask)).toBeUndefined();
  expect(
    techniqueOf(apply('top/mids'), running, head, undefined),
    'before the shelf is here',
  ).toBeUndefined();
  expect(techniques).toContain(of(apply('top/mids')));
});
