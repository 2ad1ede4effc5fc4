import { expect, it } from 'vitest';
import { moved } from './moves';

it('keys move in the grid and stop at its edges', () => {
  const size = [10, 8] as const;
  expect(moved('ArrowDown', false, [0, 0], size)).toEqual([1, 0]);
  expect(moved('ArrowUp', false, [0, 3], size)).toEqual([0, 3]);
  expect(moved('ArrowRight', false, [2, 7], size)).toEqual([2, 7]);
  expect(moved('ArrowLeft', false, [2, 7], size)).toEqual([2, 6]);
  expect(moved('Home', false, [2, 7], size)).toEqual([2, 0]);
  expect(moved('End', true, [2, 1], size)).toEqual([9, 7]);
  expect(moved('Enter', false, [2, 1], size)).toBeUndefined();
});
