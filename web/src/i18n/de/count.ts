import { counter } from '../count';

type Written = string | number;
const count = counter('de', ',');

/** Zahlen mit ihrem Hauptwort. */
export const n = {
  tonhöhen: (x: Written) => count(x, { one: 'Tonhöhe', other: 'Tonhöhen' }),
  wochen: (x: Written) => count(x, { one: 'Woche', other: 'Wochen' }),
  minuten: (x: Written) => count(x, { one: 'Minute', other: 'Minuten' }),
  zonen: (x: Written) => count(x, { one: 'Zone', other: 'Zonen' }),
  bereiche: (x: Written) => count(x, { one: 'Bereich', other: 'Bereiche' }),
  mischungen: (x: Written) => count(x, { one: 'Mischung', other: 'Mischungen' }),
  besuche: (x: Written) => count(x, { one: 'Besuch', other: 'Besuche' }),
};
