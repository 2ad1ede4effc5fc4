import type { Timeline, TimelineTask, Visit } from '../../api/types';
import { isKey, t } from '../../i18n/index.svelte';
import { whyLine } from '../../i18n/why';
import type { Alarm } from '../../visit/alarms';
import { zoneWords } from '../../visit/words';

/** "Bowl A on crown, regrowth": what hands are to do. */
export function taskSentence(task: TimelineTask): string {
  const zone = task.zone ? zoneWords(task.zone) : '';
  if (task.kind === 'mix')
    return task.mix > 1 ? t('do.mix_again', task.bowl, task.mix) : t('do.mix', task.bowl);
  if (task.kind === 'apply') return t('do.apply', task.bowl, zone);
  if (task.kind === 'remove_packet') return t('do.remove_packet', zone);
  return t(`do.${task.kind}`);
}

/** Why it is due: the rule of the house that decided, or the clock that did. */
export function taskReason(task: TimelineTask, visit: Visit): string {
  const due = `due.${task.reason}`;
  if (isKey(due)) return t(due as 'due.first_look');
  return isKey(`why.${task.reason}`) ? whyLine({ code: task.reason, path: '', params: {} }, visit) : '';
}

export function alarmSentence(alarm: Alarm): string {
  const zone = alarm.zone ? zoneWords(alarm.zone) : '';
  switch (alarm.kind) {
    case 'check':
      return t('alarm.check');
    case 'comfort':
      return t('alarm.comfort');
    case 'basin':
      return t('alarm.basin');
    case 'soon_over':
      return t('alarm.soon_over', alarm.bowl, zone);
    case 'over':
      return t('alarm.over', alarm.bowl, zone);
    case 'mix_old':
      return t('alarm.mix_old', alarm.bowl);
    case 'mix_stale':
      return t('alarm.mix_stale', alarm.bowl);
    case 'task':
      return t(
        'alarm.task',
        t(`task.${alarm.task as TimelineTask['kind']}`),
        [alarm.bowl, zone].filter(Boolean).join(' · '),
      );
  }
}

/** Everybody who has a task, the first the plan names first. */
export const peopleOf = (timeline: Timeline): string[] =>
  [...new Set(timeline.tasks.map((task) => task.who))].filter(Boolean);
