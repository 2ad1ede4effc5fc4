import { door } from '../offline/door.svelte';
import { settings } from '../shell/settings.svelte';
import { language, t, type Language } from './index.svelte';

let spoken: { language: Language; tag: string } | undefined;
addEventListener('languagechange', () => (spoken = undefined));

/** The chosen language as this device speaks it: "en" becomes "en-GB" where the device is set to that. */
function locale(): string {
  const chosen = language();
  // Asked once: a device takes long to say what it speaks, and every figure of a held value wants to know.
  if (spoken?.language !== chosen) {
    const own = navigator.languages.find((tag) => tag.slice(0, 2) === chosen);
    spoken = { language: chosen, tag: own ?? chosen };
  }
  return spoken.tag;
}

const numbers = new Map<string, Intl.NumberFormat>();
const dates = new Map<string, Intl.DateTimeFormat>();

/** Formats are dear to make and cheap to use: one of each kind and language. */
function made<F>(cache: Map<string, F>, kind: string, make: (locale: string) => F): F {
  const where = locale();
  const key = `${where} ${kind}`;
  let format = cache.get(key);
  if (!format) cache.set(key, (format = make(where)));
  return format;
}

/** A number in the chosen language with exactly `digits` decimals. */
export function number(value: number, digits = 0): string {
  return made(
    numbers,
    String(digits),
    (where) => new Intl.NumberFormat(where, { minimumFractionDigits: digits, maximumFractionDigits: digits }),
  ).format(value);
}

/** Avoirdupois ounce in grams (exact by definition of the international pound). */
export const GRAMS_PER_OUNCE = 28.349523125;

/** Ounces are told in these steps: scales that show half grams show them so (common practice, from memory). */
const OUNCE_STEP = 0.02;

/** The figure of a mass in the unit of this device: grams to a tenth, ounces in steps that can be weighed. */
export function massFigure(grams: number): string {
  if (settings.mass !== 'oz') return number(grams, 1);
  const steps = Math.round(grams / GRAMS_PER_OUNCE / OUNCE_STEP);
  return number(steps * OUNCE_STEP, 2);
}

/** Mass with its unit. */
export function mass(grams: number): string {
  return `${massFigure(grams)} ${t(settings.mass === 'oz' ? 'unit.oz' : 'unit.g')}`;
}

/** Peroxide strength of a bottle: percent by weight, or volumes by the trade's 10 vol = 3 % (common practice). */
export function strength(percent: number): string {
  return settings.strength === 'volumes'
    ? `${number((percent * 10) / 3, Number.isInteger((percent * 10) / 3) ? 0 : 1)} ${t('unit.volumes')}`
    : `${number(percent, Number.isInteger(percent) ? 0 : 1)}\u00a0%`;
}

/** Level of the scale with halves as "½": 6, 6½. */
export function level(value: number): string {
  const halves = Math.round(value * 2);
  return halves % 2 === 0 ? String(halves / 2) : `${Math.floor(halves / 2) || ''}½`;
}

/** Part of one as whole percent: 0.42 → "42 %". */
export function share(part: number): string {
  return `${number(part * 100)}\u00a0%`;
}

/** The salon's zone, once it was founded; else the device's. */
const zone = () => door.seen?.zone;

/** A day ("2026-03-09", the same everywhere) or a moment (its day in the salon). */
export function date(value: Date | string, style: 'short' | 'long' = 'short'): string {
  const day = typeof value === 'string' && value.length === '2026-03-09'.length;
  const timeZone = day ? 'UTC' : zone();
  return made(
    dates,
    `${style} ${timeZone ?? ''}`,
    (where) =>
      new Intl.DateTimeFormat(where, {
        timeZone,
        weekday: 'short',
        day: 'numeric',
        month: style === 'long' ? 'long' : 'short',
        year: style === 'long' ? 'numeric' : undefined,
      }),
  ).format(new Date(value));
}

export function time(value: Date | string): string {
  return made(
    dates,
    `time ${zone() ?? ''}`,
    (where) => new Intl.DateTimeFormat(where, { timeZone: zone(), hour: '2-digit', minute: '2-digit' }),
  ).format(new Date(value));
}

/** A duration in words: 45 min, 2 h 05. */
export function duration(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} ${t('unit.min')}`;
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

export function money(amount: number, currency: string): string {
  return made(
    numbers,
    currency,
    (where) => new Intl.NumberFormat(where, { style: 'currency', currency }),
  ).format(amount);
}
