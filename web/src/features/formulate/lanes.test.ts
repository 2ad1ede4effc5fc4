import { describe, expect, it } from 'vitest';
import type { PlanAnswer, TimelineTask } from '../../api/types';
import { groupZones } from '../../visit/where';
import { initials, lanesOf, offset } from './lanes';

const task = (
  id: string,
  kind: TimelineTask['kind'],
  who: string,
  bowl: string,
  start: number,
  end: number,
) => ({ id, kind, who, bowl, start_min: start, end_min: end }) as TimelineTask;
const words = {
  person: (id: string) => id,
  task: (t: TimelineTask) => t.kind,
  kind: (t: TimelineTask) => t.kind,
  bowl: (label: string) => label,
  develops: () => 'develops',
};

describe('lanes', () => {
  const plan = {
    timeline: {
      tasks: [
        task('a2', 'apply', 'col', 'A', 12, 20),
        task('m', 'mix', 'col', 'A', 0, 5),
        task('a1', 'apply', 'col', 'A', 5, 12),
        task('r', 'rinse', 'ass', '', 50, 55),
      ],
      developments: [
        { bowl: 'A', first_touch: 5, leaves_at: 50, max_until: 52 },
        { bowl: 'A', first_touch: 12, leaves_at: 50, max_until: 60 },
      ],
    },
  } as unknown as PlanAnswer;

  it('give each pair of hands a lane and join work that goes on', () => {
    const [col, ass, bowl] = lanesOf(plan, words);
    expect(col?.stretches.map((s) => [s.text, s.start, s.end])).toEqual([
      ['mix', 0, 5],
      ['apply', 5, 20],
    ]);
    expect(ass?.stretches).toHaveLength(1);
    expect(ass?.stretches[0]?.shorter).toEqual(['rinse', 'R']);
    expect(bowl?.kind).toBe('bowl');
  });

  it('show a bowl from its first touch, with the nearest latest time', () => {
    const bowl = lanesOf(plan, words).at(-1)!.stretches[0]!;
    expect([bowl.start, bowl.end, bowl.latest]).toEqual([5, 50, 52]);
  });

  it('shorten work to letters that tell it apart', () => {
    const short = initials(['rinse', 'tone', 'treat', 'take packet out', 'rinse']);
    expect([...short.values()]).toEqual(['R', 'To', 'Tr', 'Ta']);
    // A alone is a bowl.
    expect([...initials(['apply', 'mix'], ['A', 'B']).values()]).toEqual(['Ap', 'M']);
  });

  it('say the span once when a bowl serves it everywhere', () => {
    const all = ['top/regrowth', 'nape/regrowth', 'top/ends', 'nape/ends'];
    expect(groupZones(['top/regrowth', 'nape/regrowth', 'top/ends'], all)).toEqual([
      { span: 'regrowth', areas: [] },
      { span: 'ends', areas: ['top'] },
    ]);
  });

  it('counts from the first hand on the client', () => {
    expect([0, 5, 65.4].map(offset)).toEqual(['0:00', '0:05', '1:05']);
  });
});
