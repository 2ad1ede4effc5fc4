import type { PlanAnswer, Visit } from '../../api/types';
import { date } from '../../i18n/format';
import { isKey, t } from '../../i18n/index.svelte';
import { whyLine } from '../../i18n/why';
import { becameLines } from '../../visit/became';
import { half } from '../../visit/words';
import { nameOf } from '../formulate';

/** Health is the client's and the colourist's: nothing of it stands on the glass that others may see. */
const PRIVATE = 'person';

const once = (lines: readonly string[]) => [...new Set(lines.filter(Boolean))];
const between = (from: number, until: number) => (until > from ? `${from}–${until}` : String(from));

/** What the client reads: sentences from what the plan says of itself. */
export function offerOf(plan: PlanAnswer, visit: Visit) {
  const all = plan.zones.map((zone) => zone.zone);
  const treated = plan.zones.filter((zone) => zone.bowl);
  const wished = treated.map(({ zone, planned }) => ({
    zone,
    level: half(planned.level),
    tone: planned.tone,
    hex: planned.srgb.daylight.hex,
  }));
  const missed = plan.zones.filter((zone) => zone.target && !zone.target.leave && !zone.reachable);
  const { rebook, visits_from, visits_until, next_test } = plan.after;
  const WEEKS = 52;
  return {
    wished,
    words: becameLines(wished, all),
    will_not: once(missed.flatMap((zone) => zone.why_not.map((why) => whyLine(why, visit)))),
    alternatives: once([...plan.routes, ...plan.alternatives].map(nameOf)),
    risks: once([
      ...plan.verdicts
        .filter(
          ({ topic, says, bowl }) =>
            topic !== PRIVATE && (bowl || says === 'say' || says === 'ceiling' || says === 'restrict'),
        )
        .map(({ rule }) => (isKey(`rule.${rule}`) ? t(`rule.${rule}` as 'rule.age.ask') : rule)),
      t('agree.risk_allergy'),
    ]),
    upkeep: once([
      ...plan.after.told.map((line) => whyLine(line, visit)),
      ...(rebook.until > 0
        ? [
            t(
              'agree.a_year',
              between(Math.round(WEEKS / rebook.until), Math.round(WEEKS / Math.max(rebook.from, 1))),
            ),
          ]
        : []),
      ...(visits_until > 1 ? [t('agree.visits', between(visits_from, visits_until))] : []),
      ...(next_test ? [t('care.test', date(next_test, 'long'))] : []),
    ]),
    minutes: Math.round(plan.timeline.finish_min),
  };
}
