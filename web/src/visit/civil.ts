/** Civil time of the salon and instants: nights on which clocks are changed have 23 or 25 hours. */
import { door } from '../offline/door.svelte';

/** The salon's zone, once it was founded; else the device's. */
export const salonZone = (): string =>
  door.seen?.zone ?? new Intl.DateTimeFormat().resolvedOptions().timeZone;

const formats = new Map<string, Intl.DateTimeFormat>();
function formatIn(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-GB', {
      ...{ timeZone: zone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit' },
      ...{ hour: '2-digit', minute: '2-digit', second: '2-digit' },
    });
    formats.set(zone, format);
  }
  return format;
}

/** What calendar and clock of a zone show: "2026-03-29" and "03:00". */
export function civilOf(instant: Date | string | number, zone = salonZone()): { day: string; hour: string } {
  const parts = Object.fromEntries(
    formatIn(zone)
      .formatToParts(new Date(instant))
      .map(({ type, value }) => [type, value]),
  );
  return { day: `${parts.year}-${parts.month}-${parts.day}`, hour: `${parts.hour}:${parts.minute}` };
}

export const today = (): string => civilOf(Date.now()).day;

const DAY_MS = 86_400_000;
/** The civil date so many days later. */
export const daysAfter = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

/** As the API writes an instant: whole seconds of UTC. */
export const instantText = (at: number): string => new Date(at).toISOString().replace(/\.\d+/, '');

/** When a clock of the zone shows it: the first time where it does so twice; where never, as long after the change. */
export function instantAt(day: string, hour: string, zone = salonZone()): string {
  const wanted = Date.parse(`${day}T${hour}:00Z`);
  const shift = (at: number) => {
    const { day: d, hour: h } = civilOf(at, zone);
    return Date.parse(`${d}T${h}:00Z`) - at;
  };
  const before = wanted - shift(wanted - DAY_MS);
  const after = wanted - shift(wanted + DAY_MS);
  const shows = (at: number) => at + shift(at) === wanted;
  const first = Math.min(before, after);
  if (shows(first)) return instantText(first);
  return instantText(shows(Math.max(before, after)) ? Math.max(before, after) : before);
}

/** From midnight to midnight, as instants. */
export const boundsOf = (day: string, zone = salonZone()): { from: string; until: string } => ({
  from: instantAt(day, '00:00', zone),
  until: instantAt(daysAfter(day, 1), '00:00', zone),
});

/** The hours of the house on a day; closing at or before the opening hour is on the next day. */
export function openHours(day: string, opens: number, closes: number, zone = salonZone()) {
  const clock = (min: number) =>
    `${String(Math.floor(min / 60)).padStart(2, '0')}:${String(min % 60).padStart(2, '0')}`;
  return {
    from: instantAt(day, clock(opens), zone),
    until: instantAt(closes > opens ? day : daysAfter(day, 1), clock(closes), zone),
  };
}

/** Whole years on a civil date; born on 29 February, one is older on 1 March. */
export function ageOn(born: string, day: string): number {
  const years = Number(day.slice(0, 4)) - Number(born.slice(0, 4));
  return day.slice(5) < born.slice(5) ? years - 1 : years;
}

/** As the questions ask it. */
export function ageBand(born: string, day: string): 'adult' | 'from_16_to_17' | 'under_16' {
  const age = ageOn(born, day);
  return age < 16 ? 'under_16' : age < 18 ? 'from_16_to_17' : 'adult';
}
