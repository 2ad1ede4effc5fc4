import type { Fact } from '../../api/facts';
import type { StockMove } from '../../api/stock';
import type { Visit } from '../../api/types';

const escaped = (text: string) =>
  text.replace(
    /[&<>"]/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign,
  );

/** Keys and values as they are kept, one under the other; nothing is left out and nothing is said for them. */
function table(value: unknown): string {
  if (Array.isArray(value))
    return value.length ? `<ol>${value.map((v) => `<li>${table(v)}</li>`).join('')}</ol>` : '–';
  if (value && typeof value === 'object')
    return `<table>${Object.entries(value)
      .map(([key, v]) => `<tr><th>${escaped(key.replaceAll('_', ' '))}</th><td>${table(v)}</td></tr>`)
      .join('')}</table>`;
  return escaped(String(value ?? '–'));
}

/** A picture's bytes are a picture. */
function shownBody(fact: Fact): string {
  const body = fact.body as Record<string, unknown> | undefined;
  if (fact.kind !== 'photo' || !body) return table(body);
  const { jpeg, ...rest } = body;
  return `${table(rest)}<img alt="" src="data:image/jpeg;base64,${escaped(String(jpeg))}">`;
}

export interface BundleWords {
  title: string;
  language: string;
  /** A kind of fact as the screens call it. */
  kind: (kind: string) => string;
  batches: string;
  head: string;
}

/**
 * One file of all that is kept of a visit: answers, tests, consents, minutes, pictures, each fact with its time, its
 * number in the journal and who told it; the batches that its bowls took; the head as it was read. It opens anywhere
 * and asks nobody.
 */
export function bundleOf(
  words: BundleWords,
  visit: Visit,
  facts: readonly Fact[],
  moves: readonly StockMove[],
): string {
  const parts = facts
    // All of the visit stands at the end.
    .filter(({ kind }) => kind !== 'visit.handed_in')
    .map(
      (fact) =>
        `<section><h2>${escaped(words.kind(fact.kind))}</h2><p>${escaped(fact.made_at)} · ${escaped(fact.kind)} · ${fact.store_seq}${
          fact.by ? ` · ${escaped(fact.by)}` : ''
        }</p>${shownBody(fact)}</section>`,
    );
  const title = escaped(words.title);
  return `<!doctype html><html lang="${escaped(words.language)}"><head><meta charset="utf-8"><title>${title}</title>
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
<style>body{font:16px/1.4 sans-serif;max-width:60em;margin:2em auto;padding:0 1em}table{border-collapse:collapse}th,td{border:1px solid #888;padding:.2em .5em;text-align:start;vertical-align:top}img{max-width:100%}section{break-inside:avoid}</style>
</head><body><h1>${title}</h1>${parts.join('\n')}
<section><h2>${escaped(words.batches)}</h2>${table(moves)}</section>
<section><h2>${escaped(words.head)}</h2>${table(visit)}</section></body></html>
`;
}
