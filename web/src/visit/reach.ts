import type {
  Lab,
  ReachAnswer,
  ReachCellView,
  TargetView,
  Tone,
  ToneSwatch,
  Visit,
  ZoneReachView,
} from '../api/types';
import { wishFor, zonesIn, type Scope, type Wish } from './aims';

/** A zone that misses a cell of the map, and what it becomes instead. */
export interface Missed {
  zone: string;
  cell: ReachCellView;
}

/** One cell for all zones that are asked about; reached where every one of them reaches it. */
export interface ReachHere {
  reachable: boolean;
  /** Zones that miss it, the farthest in depth first. */
  missed: Missed[];
}

export type ReachMap = ReadonlyMap<string, ReachHere>;

export const cellKey = (level: number, tone: Tone): string => `${level} ${tone}`;

/** The zones in scope that something is wished for or may be: those to be left alone do not count. */
export function askedZones(visit: Visit, scope: Scope): string[] {
  const zones = zonesIn(visit.head, scope);
  const coloured = zones.filter((zone) => !wishFor(visit, zone)?.leave);
  return coloured.length ? coloured : zones;
}

/** The map of all these zones together. */
export function reachOf(answer: ReachAnswer, zones: readonly string[]): ReachMap {
  const map = new Map<string, ReachHere>();
  for (const { zone, cells } of answer.zones) {
    if (!zones.includes(zone)) continue;
    for (const cell of cells) {
      const key = cellKey(cell.level, cell.tone);
      const here = map.get(key) ?? { reachable: true, missed: [] };
      if (!cell.reachable) {
        here.reachable = false;
        here.missed.push({ zone, cell });
      }
      map.set(key, here);
    }
  }
  for (const { missed } of map.values())
    missed.sort((a, b) => Math.abs(b.cell.level_error) - Math.abs(a.cell.level_error));
  return map;
}

/** A cell's place on the map. */
export interface Place {
  level: number;
  tone: Tone;
}

/**
 * Where a wish is looked up on the map: at its own level and tone, or at those that the server says its shade or picked
 * colour has; between two levels, at the darker one. Undefined where nothing is wished or hair is left alone.
 */
export function placeOf(wish: Wish | undefined, target: TargetView | undefined): Place | undefined {
  if (!wish || wish.leave) return undefined;
  if (wish.level !== undefined) return { level: Math.floor(wish.level), tone: wish.tone ?? 'natural' };
  if (!target || target.leave) return undefined;
  const level = Math.floor(Math.round(target.level * 2) / 2);
  return { level: Math.min(Math.max(level, 1), 10), tone: target.tone };
}

/** What the map says there. */
export const cellOf = (map: ReachMap, at: Place | undefined): ReachHere | undefined =>
  at && map.get(cellKey(at.level, at.tone));

/**
 * The zone that speaks for all: the one that misses the place farthest in depth, else the one that only just reaches it;
 * without a place the first.
 */
export function telling(
  answer: ReachAnswer,
  zones: readonly string[],
  at: Place | undefined,
): { zone: ZoneReachView; cell: ReachCellView | undefined } | undefined {
  const found = answer.zones
    .filter(({ zone }) => zones.includes(zone))
    .map((zone) => ({
      zone,
      cell: at && zone.cells.find((cell) => cell.level === at.level && cell.tone === at.tone),
    }));
  const off = (cell: ReachCellView | undefined) => Math.abs(cell?.level_error ?? 0);
  return found.toSorted(
    (p, q) =>
      Number(p.cell?.reachable ?? true) - Number(q.cell?.reachable ?? true) || off(q.cell) - off(p.cell),
  )[0];
}

/** Level and tone whose swatch lies nearest to a colour (CIELAB distance, as only words depend on it). */
export function wordsFor(lab: Lab, swatches: readonly ToneSwatch[]): ToneSwatch | undefined {
  const far = ({ lab: s }: ToneSwatch) => Math.hypot(s.l - lab.l, s.a - lab.a, s.b - lab.b);
  return swatches.reduce<ToneSwatch | undefined>(
    (best, swatch) => (best && far(best) <= far(swatch) ? best : swatch),
    undefined,
  );
}
