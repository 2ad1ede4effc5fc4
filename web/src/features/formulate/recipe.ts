import type { PartEffect, Recipe, Turn } from '../../api/types';
import { duration, mass, number, strength } from '../../i18n/format';
import { t } from '../../i18n/index.svelte';
import { shown } from '../../i18n/shown';
import { settings } from '../../shell/settings.svelte';
import { scale } from '../../visit/scale.svelte';
import { directionWords } from '../../visit/words';

const find = (id: string) => scale.shelf?.products.find((p) => p.id === id);

/** The name on the label; a developer's strength as the salon says it. */
export function productWords(id: string, name?: string): string {
  const found = find(id);
  return settings.strength === 'volumes' && found?.cls === 'developer' && found.peroxide_percent
    ? `${t('class.developer')} ${strength(found.peroxide_percent)}`
    : shown(found?.code ? [found.code, found.name].filter(Boolean).join(' · ') : (name ?? found?.name ?? id));
}

/** "7 natural 30.0 g + developer 6 % 30.0 g"; figures stay with their unit and name. */
export const mixWords = (parts: readonly { product: string; name?: string; grams: number }[]) =>
  parts
    .map((p) => `${productWords(p.product, p.name)} ${mass(p.grams)}`.replaceAll(' ', '\u00a0'))
    .join(' + ');

const rangeWords = (id: string) => shown(scale.shelf?.ranges.find((r) => r.id === id)?.name ?? id);

/** "cover colour: 5/8 7 natural + 3/8 7 ash, 6 % 1:1, 35 min"; shades of several ranges bear the same name. */
export function recipeWords(recipe: Recipe): string {
  const parts = recipe.shares.map((s) => `${s.eighths}/8 ${productWords(s.product)}`).join(' + ');
  const developer = `${strength(recipe.developer_percent)} 1:${number(recipe.ratio, recipe.ratio % 1 ? 1 : 0)}`;
  return `${rangeWords(recipe.range)}: ${[
    parts,
    ...(recipe.developer_percent > 0 ? [developer] : []),
    duration(recipe.minutes),
  ].join(', ')}`;
}

/** Levels less than this are not worth a word. */
export const smallest = 0.05;

/** "0.6 levels lighter, warmer": the result without the part. */
export function effectWords(effect: PartEffect): string {
  const words = [
    ...directionWords(effect.level_without, effect.warm_without, effect.red_without),
    ...(effect.loss_without < smallest ? [] : [t('effects.further', number(effect.loss_without, 2))]),
  ];
  return words.length ? words.join(', ') : t('effects.same');
}

/** The misreading that would put the next best bowl in front. */
export function turnWords(turn: Turn): string {
  if (turn.reading === 'white') return t(turn.by > 0 ? 'plan.turn_white_more' : 'plan.turn_white_less');
  if (turn.reading === 'porosity')
    return t(turn.by > 0 ? 'plan.turn_porosity_more' : 'plan.turn_porosity_less');
  return t(turn.by > 0 ? 'plan.turn_level_lighter' : 'plan.turn_level_darker');
}
