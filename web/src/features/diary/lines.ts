import type { Booked } from '../../api/diary';
import { date, time } from '../../i18n/format';
import { t } from '../../i18n/index.svelte';
import { shown } from '../../i18n/shown';
import { instantText } from '../../visit/civil';
import type { Entry } from '../../visit/dates';

export type { Booked };

const MIN_MS = 60_000;
export const endOf = ({ booking: { starts_at, minutes } }: Booked): string =>
  instantText(Date.parse(starts_at) + minutes * MIN_MS);

export const stands = ({ booking: { state } }: Booked): boolean =>
  state === undefined || state === 'booked' || state === 'came';

/** Who it is for, as the list says it. */
export const forWhom = ({ booking }: Booked): string =>
  booking.client ? shown(booking.client) : t('diary.no_name');

/** What is known of the test before a colour; `known` are the lines that were read. */
export function testWords({ booking }: Booked, known: ReadonlyMap<string, Booked>): string {
  if (booking.kind !== 'colour') return '';
  if (booking.test === 'not_needed') return '';
  if (booking.test === 'valid') return t('diary.test_valid');
  const test = known.get(booking.test_booking ?? '');
  if (!test || !stands(test)) return booking.test_booking && !test ? '' : t('diary.test_missing');
  if (test.booking.read) return t('diary.test_read');
  if (test.booking.state === 'came') return t('diary.test_made');
  return t('diary.test_planned', `${date(test.booking.starts_at)}, ${time(test.booking.starts_at)}`);
}

/** What the bowls of some lines need, product by product, most first. */
export function toTake(lines: readonly Booked[]): { product: string; name: string; grams: number }[] {
  const sums = new Map<string, { product: string; name: string; grams: number }>();
  for (const line of lines) {
    if (line.booking.state !== 'booked' && line.booking.state !== undefined) continue;
    for (const { product, name = '', grams } of line.booking.take ?? []) {
      const sum = sums.get(product);
      if (sum) sum.grams += grams;
      else sums.set(product, { product, name: name || product, grams });
    }
  }
  return [...sums.values()].sort((a, b) => b.grams - a.grams);
}

/** Lines as a calendar keeps them: who and what for, nothing of health, price or contact. */
export const calendarOf = (lines: readonly Booked[]): Entry[] =>
  lines.filter(stands).map((line) => ({
    uid: `${line.id}@strandline`,
    from: line.booking.starts_at,
    until: endOf(line),
    summary: `${forWhom(line)}, ${t(`diary.kind_${line.booking.kind ?? 'colour'}`)}`,
  }));
