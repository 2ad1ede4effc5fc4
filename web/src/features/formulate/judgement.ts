import type { PlanAnswer, Verdict, ZoneView } from '../../api/types';
import { isKey, t } from '../../i18n/index.svelte';
import { colourWords, directionWords, zoneWords } from '../../visit/words';
import { smallest } from './recipe';
import { worse } from './ways';

/** What a verdict's rule says, in words; a code without words as itself. */
export const ruleWords = ({ rule }: Pick<Verdict, 'rule'>): string =>
  isKey(`rule.${rule}`) ? t(`rule.${rule}` as 'rule.age.ask') : rule;

/** What stands in the way of these bowls: rules that they pass, else what stops the visit. */
export function stops(answer: PlanAnswer): string[] {
  if (answer.go !== 'stopped') return [];
  const closing = answer.verdicts.filter((v) => v.says === 'stop' || v.says === 'ask');
  const own = closing.filter((v) => v.bowl !== '');
  return [...new Set((own.length ? own : closing).map(ruleWords))];
}

const wanted = (zones: readonly ZoneView[]) => zones.filter((z) => z.bowl && z.target && !z.target.leave);

/** Expected miss over all zones with a target, levels. */
const miss = ({ zones }: PlanAnswer) => {
  const aimed = zones.filter((z) => z.target && !z.target.leave && z.landing);
  const weight = aimed.reduce((all, z) => all + z.target!.weight, 0);
  return weight > 0
    ? aimed.reduce((all, z) => all + z.target!.weight * z.landing!.expected_loss, 0) / weight
    : undefined;
};

/** Where the result is on the target to the eye: half a level and half the tones' distance are not seen as a miss (by choice). */
const NEAR = { level: 0.3, tone: 3 };

/** What bowls of one's own do, in one line, beside the suggestion where there is one. */
export function judgement(answer: PlanAnswer, suggestion?: PlanAnswer): string {
  const why = stops(answer);
  if (answer.go === 'stopped') return t('own.stopped', why[0] ?? t('go.stopped'));
  const zones = wanted(answer.zones);
  if (!zones.length) {
    const said = [...new Set(answer.zones.filter((z) => z.bowl).map((z) => colourWords(z.planned)))];
    return said.length ? t('own.gives', said.join(' · ')) : t('own.nothing');
  }
  const off = (z: ZoneView) => z.landing?.expected_loss ?? 0;
  const worst = zones.toSorted((a, b) => off(b) - off(a))[0]!;
  const { planned, target } = worst;
  const level = planned.level - target!.level;
  const [a, b] = [planned.lab.a - target!.lab.a, planned.lab.b - target!.lab.b];
  const words = directionWords(
    Math.abs(level) < NEAR.level ? 0 : level,
    Math.abs(b) < NEAR.tone ? 0 : b,
    Math.abs(a) < NEAR.tone ? 0 : a,
  );
  const lands = words.length ? t('own.off', zoneWords(worst.zone), words.join(', ')) : t('own.on_target');
  const [mine, its] = [miss(answer), suggestion && suggestion.bowls.length ? miss(suggestion) : undefined];
  if (mine === undefined || its === undefined) return lands;
  const apart = mine - its;
  return `${lands} ${t('own.beside', worse(Math.abs(apart) < smallest ? 0 : apart))}`;
}
