import { expect, test } from 'vitest';
import type { PlanAnswer } from '../../api/types';
import { orderOf } from './order';

const step = (reason: string, needs_min: number, zone = 'top/regrowth') => ({
  application: 'a',
  zone,
  who: 'colourist',
  reason,
  out_of_order: false,
  needs_min,
});
const planned = (steps: ReturnType<typeof step>[]) =>
  ({ timeline: { order: steps } }) as unknown as PlanAnswer;

test('each reason is told once, those of need with their minutes', () => {
  const told = orderOf(
    planned([
      step('needs_longest', 35),
      step('needs_less', 10),
      step('needs_less', 5),
      step('whitest_first', 35),
      step('whitest_first', 20),
      step('', 3),
    ]),
  );
  expect(told.map((why) => [why.code, why.params.minutes])).toEqual([
    ['needs_longest', '35'],
    ['needs_less', '10'],
    ['needs_less', '5'],
    ['whitest_first', '35'],
  ]);
});

test('zones that go on later for the same reason are named together', () => {
  const told = orderOf(
    planned([
      step('needs_longest', 35),
      step('needs_less', 10, 'top/lengths'),
      step('needs_less', 10, 'crown/lengths'),
    ]),
  );
  expect(told[1]?.params.zones).toBe('top, lengths and crown, lengths');
});
