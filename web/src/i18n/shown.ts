/*
 * Text that somebody typed or sent, as it may stand on a page. Marks that turn the order of letters, line ends and
 * characters without a picture are written as ⟨U+202E⟩: isolating such a name would keep it from turning the rest of
 * the page, but it could still look like another name. The joiners U+200C and U+200D stay; some scripts need them.
 */
const hidden =
  /[\p{Cc}\u061C\u200B\u200E\u200F\u2028-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB\u{E0000}-\u{E007F}]/gu;

const written = (mark: string) => `⟨U+${mark.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}⟩`;

export const shown = (text: string): string => text.replace(hidden, written);

/** What fills a sentence: texts, and tables of texts, made fit to stand in it. */
export function shownIn(value: unknown): unknown {
  if (typeof value === 'string') return shown(value);
  if (!value || Object.getPrototypeOf(value) !== Object.prototype) return value;
  return Object.fromEntries(Object.entries(value).map(([key, text]) => [key, shownIn(text)]));
}
