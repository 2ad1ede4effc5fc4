import { counter } from '../count';

type Written = string | number;
const count = counter('de', ',');

/** Zahlen mit ihrem Hauptwort. */
export const n = {
  tonhöhen: (x: Written) => count(x, { one: 'Tonhöhe', other: 'Tonhöhen' }),
  wochen: (x: Written) => count(x, { one: 'Woche', other: 'Wochen' }),
  minuten: (x: Written) => count(x, { one: 'Minute', other: 'Minuten' }),
  sekunden: (x: Written) => count(x, { one: 'Sekunde', other: 'Sekunden' }),
  zonen: (x: Written) => count(x, { one: 'Zone', other: 'Zonen' }),
  bereiche: (x: Written) => count(x, { one: 'Bereich', other: 'Bereiche' }),
  schalen: (x: Written) => count(x, { one: 'Schale', other: 'Schalen' }),
  päckchen: (x: Written) => count(x, { one: 'Päckchen', other: 'Päckchen' }),
  mischungen: (x: Written) => count(x, { one: 'Mischung', other: 'Mischungen' }),
  besuche: (x: Written) => count(x, { one: 'Besuch', other: 'Besuche' }),
  /** Im Dativ: „von 200 Haaren“. */
  haaren: (x: Written) => count(x, { one: 'Haar', other: 'Haaren' }),
  zeichen: (x: Written) => count(x, { one: 'Zeichen', other: 'Zeichen' }),
  wäschen: (x: Written) => count(x, { one: 'Wäsche', other: 'Wäschen' }),
  produkte: (x: Written) => count(x, { one: 'Produkt', other: 'Produkte' }),
  variations: (x: Written) => count(x, { one: 'Variante', other: 'Varianten' }),
};

/** Ein Wert in deutscher Schreibweise; Namen bleiben, wie sie sind, ein fehlender Wert steht als „?“ da. */
export const of = (p: Readonly<Record<string, string>>, key: string) =>
  (p[key] ?? '?').replace(/^(-?\d+)\.0$/, '$1').replace(/^(-?\d+)\.(\d+)$/, '$1,$2');
