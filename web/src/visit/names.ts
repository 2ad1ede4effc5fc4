import { shown } from '../i18n/shown';
import { isKey, t, type Key } from '../i18n/index.svelte';

// Every frame of a held value asks for the same few names.
const keyOf = new Map<string, Map<string, Key | undefined>>();

/** A name of the document in the words of the screen where the dictionary knows it. */
export function known(prefix: string, name: string): string {
  let names = keyOf.get(prefix);
  if (!names) keyOf.set(prefix, (names = new Map()));
  let key = names.get(name);
  if (key === undefined && !names.has(name)) {
    const made = `${prefix}.${name.replaceAll(' ', '_')}`;
    key = isKey(made) ? made : undefined;
    names.set(name, key);
  }
  return key ? t(key as 'ui.close') : shown(name);
}

/** Titles of demo visits are marked as invented; a salon's own labels are nobody's to translate. */
const demo = / \(invented\)$/;
const demoKey = (title: string) =>
  title
    .replace(demo, '')
    .toLowerCase()
    .replace(/[^a-z]+/g, '_');

/** A client's name as it may stand on a page. */
export function clientName(name?: string): string {
  if (!name) return t('visit.unnamed');
  const key = demo.test(name) ? `demo.${demoKey(name)}` : '';
  return isKey(key) ? t(key as 'ui.close') : shown(name);
}
