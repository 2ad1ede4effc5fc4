import type { NewClient } from '../../api/diary';
import { newId } from '../../api/id';

/** Text of a file: UTF-8, else as office programs of the west write it without saying so. */
export function textOf(bytes: ArrayBuffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Cells of a CSV text (RFC 4180), the separator being whichever of , ; and tab the first line has most of. */
export function cellsOf(text: string): string[][] {
  const first = text.split(/\r?\n/, 1)[0] ?? '';
  const count = (sign: string) => first.split(sign).length;
  const separator = [';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best), ',');
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const end = () => {
    row.push(cell.trim());
    cell = '';
  };
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[i + 1] === '"') cell += text[++i];
      else quoted = false;
    } else if (sign === '"' && cell.trim() === '') {
      cell = '';
      quoted = true;
    } else if (sign === separator) end();
    else if (sign === '\n' || sign === '\r') {
      if (sign === '\r' && text[i + 1] === '\n') i++;
      end();
      rows.push(row);
      row = [];
    } else cell += sign;
  }
  end();
  rows.push(row);
  return rows.filter((one) => one.some(Boolean));
}

const plain = (text: string) =>
  text
    .normalize('NFD')
    .replace(/\p{M}|^\uFEFF/gu, '')
    .toLowerCase()
    .trim();

/** Headings in the four languages of the app. */
const headings = {
  name: ['name', 'client', 'kundin', 'kunde', 'nom', 'nombre', 'cliente'],
  contact: ['contact', 'phone', 'email', 'kontakt', 'telefon', 'telephone', 'contacto', 'telefono'],
  text: ['text', 'note', 'notes', 'card', 'karte', 'notiz', 'texte', 'fiche', 'texto', 'ficha', 'nota'],
  date: ['date', 'datum', 'fecha'],
} as const;

export interface ClientList {
  clients: NewClient[];
  /** Lines in which nobody is named, as they stand there. */
  nameless: string[];
}

/** Clients of a list with a line of headings; nothing where no heading names them. Other columns go to the text. */
export function clientsIn(text: string): ClientList | undefined {
  const [head = [], ...rows] = cellsOf(text);
  const column = (key: keyof typeof headings) =>
    head.findIndex((cell) => (headings[key] as readonly string[]).includes(plain(cell)));
  const at = { name: column('name'), contact: column('contact'), text: column('text'), date: column('date') };
  if (at.name < 0) return undefined;
  const known = new Set(Object.values(at));
  const rest = (row: readonly string[]) =>
    row.flatMap((cell, i) => (known.has(i) || !cell ? [] : [head[i] ? `${head[i]}: ${cell}` : cell]));
  const clients: NewClient[] = [];
  const nameless: string[] = [];
  for (const row of rows) {
    const cell = (index: number) => row[index] ?? '';
    if (!cell(at.name)) nameless.push(row.filter(Boolean).join(' · '));
    else
      clients.push({
        id: newId(),
        name: cell(at.name),
        contact: cell(at.contact),
        text: [cell(at.text), ...rest(row)].filter(Boolean).join('\n'),
        date: cell(at.date),
      });
  }
  return { clients, nameless };
}

/** So many are handed in at once: the salon takes each part whole or not at all. */
const AT_ONCE = 500;
export const partsOf = (clients: readonly NewClient[]): NewClient[][] =>
  Array.from({ length: Math.ceil(clients.length / AT_ONCE) }, (_, i) =>
    clients.slice(i * AT_ONCE, (i + 1) * AT_ONCE),
  );
