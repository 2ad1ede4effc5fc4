import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Mark, Running, Visit } from '../api/types';
import { visit } from './test-visit';
import { together } from './together';

const mark = (task: string, at_min = 1): Mark => ({ task, what: 'done', at_min });
const run = (marks: Mark[], more: Partial<Running> = {}) =>
  ({ ...visit, running: { since: 's', bowls: [], plan: {}, marks, ...more } as unknown as Running }) as Visit;
const tasks = (v: Visit | undefined) => v?.running?.marks?.map((m) => m.task).sort();

it('keeps the marks of both devices and the undo of either', () => {
  expect(tasks(together(run([]), run([mark('a')]), run([mark('b')])))).toEqual(['a', 'b']);
  expect(tasks(together(run([mark('a')]), run([]), run([mark('a'), mark('b')])))).toEqual(['b']);
  expect(tasks(together(run([mark('a')]), run([mark('a'), mark('b')]), run([])))).toEqual(['b']);
});

it('loses no mark, whichever device hands in first', () => {
  const some = fc.uniqueArray(fc.integer({ min: 0, max: 20 }), { maxLength: 8 });
  fc.assert(
    fc.property(some, some, some, (base, mine, theirs) => {
      const of = (ns: number[]) =>
        run([...base, ...ns].filter((n, i, a) => a.indexOf(n) === i).map((n) => mark(`${n}`)));
      const once = tasks(together(of([]), of(mine), of(theirs)));
      expect(once).toEqual(tasks(together(of([]), of(theirs), of(mine))));
      expect(once).toEqual([...new Set([...base, ...mine, ...theirs])].map(String).sort());
    }),
  );
});

it('stops when either stopped, and asks a person where both said another thing', () => {
  const stopped = together(run([]), run([], { stopped_at: 9 }), run([], { stopped_at: 7 }));
  expect(stopped?.running?.stopped_at).toBe(7);
  expect(together(run([]), run([], { leave_by: 90 }), run([mark('a')]))?.running?.leave_by).toBe(90);
  expect(together(run([]), run([], { leave_by: 90 }), run([], { leave_by: 80 }))).toBeUndefined();
  expect(together(run([], { leave_by: 90 }), run([]), run([], { leave_by: 90 }))?.running).not.toHaveProperty(
    'leave_by',
  );
});

it('leaves a change of anything else, or another beginning, to a person', () => {
  expect(together(run([]), { ...run([]), date: '2026-03-10' }, run([mark('a')]))).toBeUndefined();
  expect(together(visit, run([]), run([], { since: 't' }))).toBeUndefined();
  // Theirs may have changed the reading: mine are marks only.
  const theirs = { ...run([mark('b')]), date: '2026-03-10' };
  expect(together(run([]), run([mark('a')]), theirs)?.date).toBe('2026-03-10');
});
