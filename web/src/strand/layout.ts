import { hasPlan } from './check';
import type { ColourFan, StrandPicture, StrandSpan } from './types';

/** Everything about a strip that does not depend on colour, in CSS px. */
export interface StripLayout {
  readonly width: number;
  readonly height: number;
  readonly pxPerCm: number;
  readonly hairWidth: number;
  /** Hair at the scalp that nobody has read: left bare. */
  readonly bareTo: number;
  readonly halfHeight: number;
  readonly todayTop: number;
  readonly plannedTop: number | null;
  readonly joins: readonly number[];
  readonly letters: readonly { readonly letter: string; readonly x: number; readonly y: number }[];
  readonly fans: readonly { readonly fan: ColourFan; readonly y: number; readonly height: number }[];
  readonly fanX: number;
  readonly marks: readonly { readonly half: 'today' | 'planned'; readonly x: number; readonly y: number }[];
}

export interface StripOptions {
  /** Room for hair and fan, CSS px. */
  readonly width: number;
  /** Shared by all strips under one another. */
  readonly pxPerCm: number;
  /** Height of one half. */
  readonly halfHeight?: number;
}

export const HALF_HEIGHT = 46;
export const HALF_GAP = 5;
export const FAN_WIDTH = 30;
export const FAN_GAP = 6;
export const LETTER_RADIUS = 10;
export const TOP = 2;

/** The largest scale at which the longest strip, and its fan if there may be one, fit into `width`; at most 26 px per cm. */
export function sharedScale(pictures: readonly StrandPicture[], width: number, fan = true): number {
  const longest = Math.max(...pictures.map((p) => p.lengthCm), 1);
  const beside = fan ? FAN_WIDTH + FAN_GAP : 0;
  return Math.max(2, Math.min(26, (width - beside - 2) / longest));
}

/** Letters sit where their span starts, moved along so that none hides another. */
function placeLetters(spans: readonly StrandSpan[], pxPerCm: number, y: number, end: number) {
  const letters: { letter: string; x: number; y: number }[] = [];
  let free = LETTER_RADIUS + 2;
  for (const [nth, span] of spans.entries()) {
    const middle = ((span.fromCm + span.toCm) / 2) * pxPerCm;
    const start = span.fromCm * pxPerCm + LETTER_RADIUS + 4;
    // Bowls that follow one another on several spans are lettered once: A B, not A B A B.
    const last = spans[nth - 1]?.bowls;
    const alike = (span.bowls?.length ?? 0) > 1 && last?.join() === span.bowls?.join();
    const before = span.goesOn || alike ? last : undefined;
    for (const letter of span.bowls?.filter((one) => !before?.includes(one)) ?? []) {
      const x = Math.max(free, Math.min(start, Math.max(middle, LETTER_RADIUS + 2)));
      letters.push({ letter, x: Math.min(x, Math.max(end, free)), y });
      free = x + 2 * LETTER_RADIUS + 3;
    }
  }
  return letters;
}

function placeFans(spans: readonly StrandSpan[], top: number, height: number) {
  const fans = spans.flatMap(({ fan }) => fan ?? []);
  const each = height / Math.max(fans.length, 1);
  return fans.map((fan, i) => ({ fan, y: top + i * each, height: each }));
}

function placeMarks(
  spans: readonly StrandSpan[],
  pxPerCm: number,
  todayTop: number,
  plannedTop: number | null,
) {
  const marks: { half: 'today' | 'planned'; x: number; y: number }[] = [];
  for (const span of spans) {
    const x = span.toCm * pxPerCm - 11;
    if (span.today.some((p) => p.outOfGamut)) marks.push({ half: 'today', x, y: todayTop + 11 });
    if (plannedTop !== null && span.planned.some((p) => p.outOfGamut)) {
      marks.push({ half: 'planned', x, y: plannedTop + 11 });
    }
  }
  return marks;
}

/** Lays out one strip. Total height holds the letters, which hang over the lower edge. */
export function layoutStrip(picture: StrandPicture, options: StripOptions): StripLayout {
  const { width, pxPerCm, halfHeight = HALF_HEIGHT } = options;
  const planned = hasPlan(picture);
  const hairWidth = picture.lengthCm * pxPerCm;
  const plannedTop = planned ? TOP + halfHeight + HALF_GAP : null;
  const bottom = (plannedTop ?? TOP) + halfHeight;
  return {
    width,
    pxPerCm,
    halfHeight,
    hairWidth,
    bareTo: (picture.spans[0]?.fromCm ?? 0) * pxPerCm,
    plannedTop,
    height: bottom + LETTER_RADIUS,
    todayTop: TOP,
    joins: picture.spans.slice(1).flatMap((span) => (span.goesOn ? [] : [span.fromCm * pxPerCm])),
    letters: placeLetters(picture.spans, pxPerCm, bottom - 3, hairWidth),
    fans: plannedTop === null ? [] : placeFans(picture.spans, plannedTop, halfHeight),
    fanX: hairWidth + FAN_GAP,
    marks: placeMarks(picture.spans, pxPerCm, TOP, plannedTop),
  };
}
