import type { Area, Band, PlanAnswer } from '../../api/types';
import { number } from '../../i18n/format';
import { t } from '../../i18n/index.svelte';
import { zoneId } from '../../visit/head';
import { known } from '../../visit/names';
import { areaName } from '../../visit/words';

/** One band as it is told at a strand. */
export interface BandLine {
  words: string;
  /** Where it runs across this strand, cm from the scalp; undefined where it lies between two areas. */
  atCm?: number;
}

const split = (zone: string): [area: string, span: string] => {
  const at = zone.indexOf('/');
  return [zone.slice(0, at), zone.slice(at + 1)];
};

/** Whether it was asked for: the engine says so in a note of its own. */
const wasWished = (plan: PlanAnswer, band: Band) =>
  plan.notes.some(
    ({ code, params }) =>
      code === 'band_wished' && params.lighter === band.lighter && params.darker === band.darker,
  );

/** Levels that are told to a tenth and do not differ by more are the same. */
const TENTH = 0.1;

function reason(plan: PlanAnswer, { levels, today, wished }: Band, asked: boolean): string {
  if (asked) return t('band.wished');
  const before = number(today, 1);
  if (wished > TENTH) return t('band.more_than_wished', number(wished, 1));
  if (today < -TENTH) return t('band.turned');
  if (today < TENTH) return t('band.new');
  if (levels > today + TENTH) return t('band.more', before);
  return levels < today - TENTH ? t('band.less', before) : t('band.stays');
}

/**
 * The bands that are told at this area's strand, the widest first: those between its own spans, and those to another area
 * where its hair is the lighter. A band is told once on a head.
 */
export function bandLines(plan: PlanAnswer, area: Area): BandLine[] {
  return plan.bands.flatMap((band) => {
    const [lightArea, lightSpan] = split(band.lighter);
    const [darkArea, darkSpan] = split(band.darker);
    if (lightArea !== area.id) return [];
    const asked = wasWished(plan, band);
    const levels = number(band.levels, 1);
    const why = reason(plan, band, asked);
    if (darkArea !== area.id) {
      const other = t('zone.words', areaName(darkArea), known('span', darkSpan));
      return [{ words: t('band.line', known('span', lightSpan), levels, other, why) }];
    }
    const pair = area.spans.filter((span) => [band.lighter, band.darker].includes(zoneId(area, span)));
    const atCm = Math.max(...pair.map((span) => span.from_cm ?? 0));
    return [{ words: t('band.line', known('span', lightSpan), levels, known('span', darkSpan), why), atCm }];
  });
}
