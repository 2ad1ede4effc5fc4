import type { Area } from '../api/types';
import { language } from '../i18n/index.svelte';
import type { StrandPicture } from '../strand/types';
import { wovenWords } from './words';

/** One area on the board. */
export interface HairRow {
  id: string;
  title: string;
  note?: string;
  /** What is special here: extensions, thin hair and the like. */
  states?: readonly string[];
  /** How much of their area packets are, and how wide: they stand under it. */
  packets?: string;
  picture: StrandPicture;
}

const alike = (a: HairRow, b: HairRow) =>
  a.id === b.id &&
  a.title === b.title &&
  a.note === b.note &&
  a.packets === b.packets &&
  a.picture === b.picture &&
  a.states?.join('|') === b.states?.join('|');

/** What the row of an area says where it is packets. */
export function packetsRow(area: Area): Pick<HairRow, 'packets'> {
  const packets = wovenWords(area);
  return packets ? { packets } : {};
}

/** `make`, worked out once for each area that stays as it is, and language. */
export function sayOnce<T>(make: (area: Area) => T): (area: Area) => T {
  const known = new WeakMap<Area, { in: string; said: T }>();
  return (area) => {
    const before = known.get(area);
    if (before?.in === language()) return before.said;
    const said = make(area);
    known.set(area, { in: language(), said });
    return said;
  };
}

/** Gives back the earlier row, and the earlier list, where the new one says the same: what shows it is not done again. */
export function steadyRows(): (rows: readonly HairRow[]) => readonly HairRow[] {
  let before: readonly HairRow[] = [];
  return (rows) => {
    const next = rows.map((row, i) => {
      const old = before[i];
      return old && alike(old, row) ? old : row;
    });
    if (next.length !== before.length || next.some((row, i) => row !== before[i])) before = next;
    return before;
  };
}
