import type { PlanAnswer, TimelineTask } from '../../api/types';
import type { Lane, Stretch } from '../../ui/timeline';

/** Words that the lanes need; they come from the dictionary. */
export interface LaneWords {
  person(id: string): string;
  task(task: TimelineTask): string;
  bowl(label: string): string;
  develops(label: string): string;
}

/** Neighbouring tasks of the same kind and bowl become one stretch: the drawing shows work, the list keeps detail. */
function joinTasks(tasks: readonly TimelineTask[], words: LaneWords): Stretch[] {
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
        kind: task.kind,
        bowl: task.bowl,
      });
    }
  }
  return out.map(({ id, start, end, text }) => ({ id, start, end, text }));
}

/** One lane per pair of hands and one per bowl developing on hair. */
export function lanesOf(plan: PlanAnswer, words: LaneWords): Lane[] {
  const { tasks, developments } = plan.timeline;
  const people = [...new Set(tasks.map((task) => task.who))].filter(Boolean);
  const hands = people.map((who): Lane => ({
    id: `hands ${who}`,
    label: words.person(who),
    kind: 'hands',
    stretches: joinTasks(
      tasks.filter((task) => task.who === who),
      words,
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
        },
      ],
    };
  });
  return [...hands, ...bowls];
}

/** Zones "area/span" grouped for a title: each span with its areas; areas empty when it is all of them. */
export function groupZones(
  zones: readonly string[],
  all: readonly string[],
): { span: string; areas: string[] }[] {
  const spans = [...new Set(zones.map((zone) => zone.split('/')[1] ?? ''))];
  return spans.map((span) => {
    const mine = zones.filter((zone) => zone.endsWith(`/${span}`)).map((zone) => zone.split('/')[0] ?? '');
    const there = all.filter((zone) => zone.endsWith(`/${span}`));
    return { span, areas: mine.length === there.length ? [] : mine };
  });
}

/** "0:00" … from the first hand on the client. */
export function offset(minute: number): string {
  const whole = Math.round(minute);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
