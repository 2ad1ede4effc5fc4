import type { Area, Head, Span, Visit } from '../api/types';
import { wishFor, zonesIn, type Scope, type Wish } from './aims';
import { zoneId } from './head';
import { readSpan } from './reading';
import { half } from './words';

/** What each zone in scope is to become; a zone without a wish here keeps the one it has. */
export type WishOf = (area: Area, span: Span) => Wish | undefined;

/** How much a wish begins with (priors: common practice at the chair). */
export const usual = { brighter: 1, blend: 0.5, shadow: 1 };

function wishes(head: Head, scope: Scope, wishOf: WishOf): { zone: string; wish: Wish }[] {
  const zones = new Set(zonesIn(head, scope));
  return head.areas.flatMap((area) =>
    area.spans.flatMap((span) => {
      const zone = zoneId(area, span);
      const wish = zones.has(zone) ? wishOf(area, span) : undefined;
      return wish ? [{ zone, wish }] : [];
    }),
  );
}

/** `visit` with these wishes; those of other zones stay. */
export function withWishes(visit: Visit, scope: Scope, wishOf: WishOf): Visit {
  const made = wishes(visit.head, scope, wishOf);
  const zones = new Set(made.map(({ zone }) => zone));
  const others = (visit.aims ?? []).filter((aim) => !zones.has(aim.zone));
  return { ...visit, aims: [...others, ...made.map(({ zone, wish }) => ({ zone, ...wish }))] };
}

/** Whether there is anything to wish so. */
export const possible = (head: Head, scope: Scope, wishOf: WishOf) => wishes(head, scope, wishOf).length > 0;

/** Whether all of them are wished already. */
export function holds(visit: Visit, scope: Scope, wishOf: WishOf): boolean {
  const made = wishes(visit.head, scope, wishOf);
  const same = (a: Wish | undefined, b: Wish) =>
    a?.match === b.match &&
    a?.blend === b.blend &&
    a?.brighter_by === b.brighter_by &&
    a?.shadow === b.shadow &&
    a?.level === b.level &&
    (a?.tone ?? 'natural') === (b.tone ?? 'natural') &&
    a?.second_tone === b.second_tone;
  return made.length > 0 && made.every(({ zone, wish }) => same(wishFor(visit, zone), wish));
}

/** As another span of the same area looks today: regrowth as the lengths. */
export const asSpan =
  (like: string): WishOf =>
  (area, span) => {
    const other = area.spans.find(({ id }) => id === like);
    return other && other.id !== span.id ? { match: zoneId(area, other) } : undefined;
  };

/** As another area looks today, span by span; a span it does not have is matched to its tips. */
export const asArea =
  (like: Area): WishOf =>
  (area, span) => {
    const other = like.spans.find(({ id }) => id === span.id) ?? like.spans.at(-1);
    return other && area.id !== like.id ? { match: zoneId(like, other) } : undefined;
  };

/** White covered in the hair's own colour. */
export const covered: WishOf = (_, span) => {
  const { white, level } = readSpan(span);
  return white > 0 ? { level: half(level), tone: 'natural' } : undefined;
};

/** White toned, not covered: this share, 0…1, of what tells it from the rest goes. */
export const blended =
  (share: number): WishOf =>
  (_, span) =>
    readSpan(span).white > 0 ? { blend: share } : undefined;

/** A root darker by so many levels than what is wished for the hair below it, or than that looks; in its tone. */
export const shadowed =
  (visit: Visit, levels: number): WishOf =>
  (area, span) => {
    const below = area.spans[1];
    if (!below || span !== area.spans[0] || (span.from_cm ?? 0) > 0) return undefined;
    const wish = wishFor(visit, zoneId(area, below));
    const named = wish?.level !== undefined || wish?.brighter_by !== undefined;
    return { shadow: levels, tone: named ? (wish.tone ?? 'natural') : readSpan(below).tone };
  };
