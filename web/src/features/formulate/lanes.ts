import type { BowlView, PlanAnswer, TimelineTask } from '../../api/types';
import type { Lane, Stretch } from '../../ui/timeline';

/** Words that the lanes need; they come from the dictionary. */
export interface LaneWords {
  person(id: string): string;
  task(task: TimelineTask): string;
  /** Its kind alone. */
  kind(task: TimelineTask): string;
  bowl(label: string): string;
  develops(label: string): string;
}

/** The first letter of each word, or as many as tell it from the others and from the letters of bowls. */
export function initials(words: readonly string[], bowls: readonly string[] = []): Map<string, string> {
  const all = [...new Set(words)];
  const start = (word: string, n: number) => word.slice(0, n).toLocaleLowerCase();
  const letters = bowls.map((bowl) => bowl.toLocaleLowerCase());
  return new Map(
    all.map((word) => {
      const others = all.filter((other) => other !== word);
      const taken = (n: number) =>
        letters.includes(start(word, n)) || others.some((other) => start(other, n) === start(word, n));
      let n = 1;
      while (n < word.length && taken(n)) n++;
      return [word, word.slice(0, 1).toLocaleUpperCase() + word.slice(1, n)];
    }),
  );
}

/** Neighbouring tasks of the same kind and bowl become one stretch: the drawing shows work, the list keeps detail. */
function joinTasks(
  tasks: readonly TimelineTask[],
  words: LaneWords,
  letters: ReadonlyMap<string, string>,
): Stretch[] {
  const out: (Stretch & { kind: string; bowl: string })[] = [];
  for (const task of [...tasks].sort((a, b) => a.start_min - b.start_min)) {
    const last = out.at(-1);
    if (last && last.kind === task.kind && last.bowl === task.bowl && task.start_min - last.end < 0.5) {
      last.end = Math.max(last.end, task.end_min);
    } else {
      out.push({
        id: task.id,
        start: task.start_min,
        end: task.end_min,
        text: words.task(task),
        shorter: [words.kind(task), letters.get(words.kind(task)) ?? ''],
        kind: task.kind,
        bowl: task.bowl,
      });
    }
  }
  return out.map(({ id, start, end, text, shorter }) => ({ id, start, end, text, shorter }));
}

/** One lane per pair of hands and one per bowl developing on hair. */
export function lanesOf(plan: PlanAnswer, words: LaneWords): Lane[] {
  const { tasks, developments } = plan.timeline;
  const letters = initials(
    tasks.map((task) => words.kind(task)),
    developments.map((d) => d.bowl),
  );
  const people = [...new Set(tasks.map((task) => task.who))].filter(Boolean);
  const hands = people.map((who): Lane => ({
    id: `hands ${who}`,
    label: words.person(who),
    kind: 'hands',
    stretches: joinTasks(
      tasks.filter((task) => task.who === who),
      words,
      letters,
    ),
  }));
  const bowls = [...new Set(developments.map((d) => d.bowl))].map((bowl): Lane => {
    const mine = developments.filter((d) => d.bowl === bowl);
    return {
      id: `bowl ${bowl}`,
      label: words.bowl(bowl),
      kind: 'bowl',
      stretches: [
        {
          id: bowl,
          start: Math.min(...mine.map((d) => d.first_touch)),
          end: Math.max(...mine.map((d) => d.leaves_at)),
          latest: Math.min(...mine.map((d) => d.max_until)),
          text: words.develops(bowl),
          shorter: [bowl],
        },
      ],
    };
  });
  return [...hands, ...bowls];
}

/** Letters of the bowls on a zone, in the order of their steps. */
export const bowlsOn = (bowls: readonly BowlView[], zone: string): string[] =>
  bowls
    .filter((bowl) => bowl.zones.includes(zone))
    .toSorted((a, b) => a.step - b.step)
    .map((bowl) => bowl.label);

/** "0:00" … from the first hand on the client. */
export function offset(minute: number): string {
  const whole = Math.round(minute);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
