import type { PriceAsked } from '../../api/stock';
import type { PlanAnswer, ShelfAnswer, Visit } from '../../api/types';
import { date, number } from '../../i18n/format';
import { t } from '../../i18n/index.svelte';
import { whyLine } from '../../i18n/why';
import { becameLines } from '../../visit/became';
import { half } from '../../visit/words';
import { nameOf } from '../formulate';

/** Other ways that a client would feel or see; what makes a bowl simpler to mix is the colourist's. */
const FELT = ['gentler', 'cheaper', 'quicker', 'softer_line', 'lighter_first'];
const REACTION = 'after_signs_wash_off';

const once = (lines: readonly string[]) => [...new Set(lines.filter(Boolean))];
const between = (from: number, until: number) => (until > from ? `${from}–${until}` : String(from));

const isReaction = ({ code }: { code: string }) => code === REACTION;

/** What can go wrong with these bowls on this hair, in the client's words; what the plan foresees decides which. */
function risksOf(plan: PlanAnswer): string[] {
  // By choice: from where on each is worth a sentence to a client.
  const SPREAD = 0.5; // levels either way, four heads in five
  const DRIER = 0.1; // of the condition that is left
  const CONTRAST = 1; // levels of white beside the rest
  const treated = plan.zones.filter(({ bowl }) => bowl);
  const spread = Math.max(0, ...treated.map(({ planned: { level_spread: s } }) => (s.p90 - s.p10) / 2));
  const drier = treated.some(({ today, planned }) => today.condition_left - planned.condition_left >= DRIER);
  const white = treated.some(({ planned }) => planned.contrast_levels >= CONTRAST);
  const strand = plan.verdicts.some(({ rule }) => rule === 'strand.needed');
  return [
    ...(spread >= SPREAD ? [t('agree.risk_level', number(half(spread), 1))] : []),
    ...(drier ? [t('agree.risk_drier')] : []),
    ...(white ? [t('agree.risk_white')] : []),
    ...(plan.bands.length ? [t('agree.risk_line')] : []),
    ...(strand ? [t('agree.risk_past')] : []),
    t('agree.risk_allergy'),
    t('agree.sensations'),
  ];
}

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
    alternatives: once(
      [...plan.routes, ...plan.alternatives.filter(({ axis }) => FELT.includes(axis))].map(nameOf),
    ),
    risks: once([
      ...risksOf(plan),
      ...plan.after.told.filter(isReaction).map((line) => whyLine(line, visit)),
    ]),
    rights: [t('agree.right_stop'), t('agree.right_kept')],
    upkeep: once([
      ...plan.after.told.filter((line) => !isReaction(line)).map((line) => whyLine(line, visit)),
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

/** What the house's rules of price ask of a plan: its minutes, the zone that moves most, what it mixes. */
export function askedOf(plan: PlanAnswer, minutes: number, shelf: ShelfAnswer | undefined): PriceAsked {
  const moved = plan.zones.filter((zone) => zone.bowl).map((z) => Math.abs(z.planned.level - z.today.level));
  const ids = new Set(plan.bowls.flatMap((bowl) => bowl.parts.map((part) => part.product)));
  const classes = (shelf?.products ?? []).filter((p) => ids.has(p.id)).map((p) => p.cls);
  return {
    minutes,
    levels: Math.min(10, Math.round(Math.max(0, ...moved) * 2) / 2),
    cost: plan.cost,
    classes: [...new Set(classes)],
  };
}
