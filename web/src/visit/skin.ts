import type { Visit } from '../api/types';

/** Days until a skin test can be read: common practice, 48 hours; the maker's own instructions come first. */
export const DAYS_TO_READ = 2;

/** What is known of the skin test: none; done after the visit; too young to be read; else whether it was read is asked. */
export function skinTestOf({
  skin_test,
  date,
}: Pick<Visit, 'skin_test' | 'date'>): 'none' | 'late' | 'young' | 'ask' {
  if (!skin_test) return 'none';
  const days =
    (Date.parse(date || new Date().toISOString().slice(0, 10)) - Date.parse(skin_test)) / 86_400_000;
  return days < 0 ? 'late' : days < DAYS_TO_READ ? 'young' : 'ask';
}
