import type { Head, Visit, ZoneAim } from '../api/types';
import { zoneId } from './head';

/** What is wished, without where. */
export type Wish = Omit<ZoneAim, 'zone'>;

/** Which zones a wish is for: all, one area, one span of every area, or one zone. */
export interface Scope {
  area?: string;
  span?: string;
}

export const everywhere = '*';

/** Names of the zones in scope. */
export function zonesIn(head: Head, scope: Scope): string[] {
  return head.areas
    .filter((area) => scope.area === undefined || area.id === scope.area)
    .flatMap((area) =>
      area.spans
        .filter((span) => scope.span === undefined || span.id === scope.span)
        .map((span) => zoneId(area, span)),
    );
}

const isAll = (scope: Scope) => scope.area === undefined && scope.span === undefined;

/** The wish that holds for a zone: its own, else the one for everywhere. */
export function wishFor(visit: Visit, zone: string): Wish | undefined {
  const aims = visit.aims ?? [];
  const found = aims.find((a) => a.zone === zone) ?? aims.find((a) => a.zone === everywhere);
  if (!found) return undefined;
  const { zone: _, ...wish } = found;
  return wish;
}

/** The one wish of all zones in scope; undefined when they differ or have none. */
export function wishIn(visit: Visit, scope: Scope): Wish | undefined {
  const wishes = zonesIn(visit.head, scope).map((zone) => wishFor(visit, zone));
  const [first] = wishes;
  const same = first && wishes.every((wish) => JSON.stringify(wish) === JSON.stringify(first));
  return same ? first : undefined;
}

/** `visit` with this wish in scope; a wish for everywhere replaces all others. */
export function withWish(visit: Visit, scope: Scope, wish: Wish): Visit {
  if (isAll(scope)) return { ...visit, aims: [{ zone: everywhere, ...wish }] };
  const zones = zonesIn(visit.head, scope);
  const others = (visit.aims ?? []).filter((a) => !zones.includes(a.zone));
  return { ...visit, aims: [...others, ...zones.map((zone) => ({ zone, ...wish }))] };
}

/** `visit` without wishes and bowls for zones that its head no longer has, and without wishes to match one of them. */
export function pruned(visit: Visit): Visit {
  const zones = new Set(zonesIn(visit.head, {}));
  const stale = (zone: string) => zone !== everywhere && !zones.has(zone);
  const lost = (aim: ZoneAim) => stale(aim.zone) || (aim.match !== undefined && stale(aim.match));
  const aims = visit.aims?.some(lost) ? visit.aims.filter((aim) => !lost(aim)) : visit.aims;
  const bowls = visit.bowls?.some((b) => b.zones.some(stale))
    ? visit.bowls
        .map((b) => ({ ...b, zones: b.zones.filter((z) => !stale(z)) }))
        .filter((b) => b.zones.length)
    : visit.bowls;
  return aims === visit.aims && bowls === visit.bowls ? visit : { ...visit, aims, bowls };
}

/** Wishes and bowls follow their areas: each name of `became` with those that took its place; none = gone. */
export function areaBecame(visit: Visit, became: ReadonlyMap<string, readonly string[]>): Visit {
  const carried = (zone: string) => {
    const area = zone.slice(0, Math.max(zone.indexOf('/'), 0));
    return became.get(area)?.map((name) => name + zone.slice(area.length)) ?? [zone];
  };
  return {
    ...visit,
    // A part of what was matched serves as well as the whole did.
    aims: visit.aims?.flatMap((a) => {
      const match = a.match === undefined ? {} : { match: carried(a.match)[0] ?? a.match };
      return carried(a.zone).map((zone) => ({ ...a, ...match, zone }));
    }),
    bowls: visit.bowls
      ?.map((b) => ({ ...b, zones: b.zones.flatMap(carried) }))
      .filter((b) => b.zones.length > 0),
  };
}
