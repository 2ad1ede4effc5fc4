import type { Area, ColourView, Span, Tone } from '../api/types';
import { level, number, share } from '../i18n/format';
import { language, t } from '../i18n/index.svelte';
import type { StrandWords } from '../strand/describe';
import { known } from './names';
import { placesIn, type Place } from './places';
import { saidOf } from './weave';

/** "a, b and c" in the chosen language. */
export const joined = (items: string[]) =>
  new Intl.ListFormat(language(), { type: 'conjunction' }).format(items);

/** The strand's sentences in the chosen language. */
export function strandWords(): StrandWords {
  return {
    number: (value, digits) => number(value, Number.isInteger(value) ? 0 : digits),
    whole: (cm) => t('strand.whole', cm),
    span: (label, from, to) => t('strand.span', label, from, to),
    half: (half, text) => t(half === 'today' ? 'strand.today' : 'strand.planned', text),
    population: (percent, name, packets, outside) =>
      `${percent} % ${name}` +
      (packets ? ` ${t('strand.packets', packets.widthMm, packets.everyMm)}` : '') +
      (outside ? ` (${t('ui.clipped')})` : ''),
    bowl: (letter) => t('strand.bowl', letter),
    doubt: (middle, low, high) => t('strand.doubt', middle, low, high),
    noPlan: () => t('strand.no_plan'),
    list: joined,
    sentence: (span, parts) => `${span}: ${parts.join('; ')}.`,
  };
}

/** Nearest half level. */
export const half = (value: number) => Math.round(value * 2) / 2;

/** "level 6½, gold" */
export const colourWords = (view: Pick<ColourView, 'level' | 'tone'>) =>
  t('colour.words', level(half(view.level)), t(`tone.${view.tone}`));

/** "light brown": a level as clients call it; between two the darker, as read. */
export const depthWords = (level: number) => {
  const whole = Math.min(10, Math.max(1, Math.floor(half(level))));
  return t(`depth.${whole}` as 'depth.1');
};

/** "level 4, violet-ash": what is wanted; the first of two tones leads. */
export const targetWords = (wanted: { level?: number; tone?: Tone; second_tone?: Tone }) => {
  const first = t(`tone.${wanted.tone ?? 'natural'}`);
  return t(
    'colour.words',
    level(half(wanted.level ?? 1)),
    wanted.second_tone ? t('tone.two', first, t(`tone.${wanted.second_tone}`)) : first,
  );
};

/** Levels less than this, and a*b* units less than one, are not worth a word. */
const SMALLEST = 0.05;

/** "0.6 levels lighter", "warmer": which way another colour lies; empty where it hardly differs. */
export function directionWords(levels: number, warm: number, red: number): string[] {
  const much = number(Math.abs(levels), 1);
  return [
    ...(Math.abs(levels) < SMALLEST ? [] : [t(levels > 0 ? 'effects.lighter' : 'effects.darker', much)]),
    ...(Math.abs(warm) < 1 ? [] : [t(warm > 0 ? 'effects.warmer' : 'effects.cooler')]),
    ...(Math.abs(red) < 1 ? [] : [t(red > 0 ? 'effects.redder' : 'effects.greener')]),
  ];
}

/** "6–7": the likely levels, or a single one where they agree. */
export function likelyLevels(view: ColourView): string {
  const [low, high] = [half(view.level_spread.p10), half(view.level_spread.p90)];
  return low === high ? level(low) : `${level(low)}–${level(high)}`;
}

/** A place on the head: a side of two has a word of its own, other halves follow the name of their part. */
function placeWords({ part, halves }: Place): string {
  const [first, ...rest] = halves;
  const side = first && `${part} ${first}`;
  const ownWord = side && known('area', side);
  const [whole, others] = ownWord && ownWord !== side ? [ownWord, rest] : [known('area', part), halves];
  return [whole, ...others.map((half) => t(`half.${half}`))].join(' ');
}

/** The name of an area in the words of the screen; a name of the colourist's own as it is. */
export function areaName(name: string): string {
  const packets = saidOf(name);
  if (packets) return [t('packets.of', areaName(packets.of)), packets.nth].filter(Boolean).join(' ');
  return placesIn(name)?.map(placeWords).join(' + ') ?? known('area', name);
}

export const areaWords = (area: Area) => areaName(area.id);
export const spanWords = (span: Span) => known('span', span.id);

/** A zone's name "area/span" in words. */
export function zoneWords(zone: string): string {
  const [area = '', span = ''] = zone.split('/');
  return t('zone.words', areaName(area), known('span', span));
}

/** "30 %, 4 mm": how much of their area packets are, and how wide; undefined where the area is no packets. */
export function wovenWords({ woven }: Area): string | undefined {
  if (!woven) return undefined;
  const width = woven.width_mm ?? 4;
  return t('packets.size', share(woven.share), number(width, Number.isInteger(width) ? 0 : 1));
}

/** What is special about a span, in words: other hair, an unknown past, permed or straightened. */
export function spanStates(span: Span): string[] {
  return [
    ...(span.extension ? [t('reading.extension')] : []),
    ...(span.history_unknown ? [t('reading.unknown')] : []),
    ...(span.services ?? []).map((service) => t(`service.${service.kind}`)),
    ...(span.wet_stretch_percent !== undefined && span.stretch_returns === false
      ? [t('state.overstretched')]
      : []),
  ];
}

/** The same for an area: how dense its hair is, then what is special about any of its spans, each said once. */
export function areaStates(area: Area): string[] {
  const factor = area.hair_factor ?? 1;
  const density = factor < 1 ? [t('state.thin')] : factor > 1 ? [t('state.dense')] : [];
  return [...new Set([...density, ...area.spans.flatMap(spanStates)])];
}
