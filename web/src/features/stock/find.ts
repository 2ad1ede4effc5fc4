import type { StockItem } from '../../api/stock';

export type Wanted = 'all' | 'order' | 'due' | 'count';

const plain = (text: string) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim();

/** Any part of code, name, range or barcode, word by word. */
export function matches(item: StockItem, find: string): boolean {
  const text = plain([item.code, item.name, item.range_name, item.barcode, item.product].join(' '));
  return plain(find)
    .split(/\s+/)
    .every((word) => text.includes(word));
}

export function isWanted(item: StockItem, wanted: Wanted): boolean {
  if (wanted === 'order') return item.is === 'low' || item.is === 'none';
  if (wanted === 'due') return item.batches.some((batch) => batch.soon || batch.expired);
  if (wanted === 'count') return item.is === 'short_of' || item.is === 'not_counted';
  return true;
}

/** The one product that a barcode or a code names as a whole. */
export function named(items: readonly StockItem[], text: string): StockItem | undefined {
  const typed = plain(text);
  if (!typed) return undefined;
  const of = (key: (item: StockItem) => string) => items.filter((item) => plain(key(item)) === typed);
  const found = [of((item) => item.barcode), of((item) => item.code)].find((list) => list.length);
  return found?.length === 1 ? found[0] : undefined;
}

/** Sorted by what asks for a hand: short, gone, low, due, then as the shelf stands. */
export function inTurn(items: readonly StockItem[]): StockItem[] {
  const rank = (item: StockItem) =>
    item.is === 'short_of'
      ? 0
      : item.is === 'none'
        ? 1
        : item.is === 'low'
          ? 2
          : isWanted(item, 'due')
            ? 3
            : 4;
  return [...items].sort((a, b) => rank(a) - rank(b));
}

export const called = (item: StockItem): string => [item.code, item.name].filter(Boolean).join(' · ');

/** A day that somebody types: "2027-05-31", "31.5.2027", "05/2027" (its last day); undefined = none, NaN text = wrong. */
export function typedDay(text: string): string | undefined | null {
  const typed = text.trim();
  if (!typed) return undefined;
  const whole = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(typed);
  const turned = /^(\d{1,2})[./](\d{1,2})[./](\d{4})$/.exec(typed);
  const month = /^(\d{1,2})[./-](\d{4})$/.exec(typed) ?? undefined;
  const [y, m, d] = whole
    ? [Number(whole[1]), Number(whole[2]), Number(whole[3])]
    : turned
      ? [Number(turned[3]), Number(turned[2]), Number(turned[1])]
      : month
        ? [
            Number(month[2]),
            Number(month[1]),
            new Date(Date.UTC(Number(month[2]), Number(month[1]), 0)).getUTCDate(),
          ]
        : [NaN, NaN, NaN];
  const day = new Date(Date.UTC(y, m - 1, d));
  if (Number.isNaN(day.getTime()) || day.getUTCMonth() !== m - 1 || day.getUTCDate() !== d) return null;
  return day.toISOString().slice(0, 10);
}
