import { counter } from '../count';

type Written = string | number;
const count = counter('en', '.');

/** Numbers with their nouns. */
export const n = {
  levels: (x: Written) => count(x, { one: 'level', other: 'levels' }),
  weeks: (x: Written) => count(x, { one: 'week', other: 'weeks' }),
  minutes: (x: Written) => count(x, { one: 'minute', other: 'minutes' }),
  ranges: (x: Written) => count(x, { one: 'range', other: 'ranges' }),
  seconds: (x: Written) => count(x, { one: 'second', other: 'seconds' }),
  zones: (x: Written) => count(x, { one: 'zone', other: 'zones' }),
  areas: (x: Written) => count(x, { one: 'area', other: 'areas' }),
  bowls: (x: Written) => count(x, { one: 'bowl', other: 'bowls' }),
  packets: (x: Written) => count(x, { one: 'packet', other: 'packets' }),
  visits: (x: Written) => count(x, { one: 'visit', other: 'visits' }),
  mixes: (x: Written) => count(x, { one: 'mix', other: 'mixes' }),
  variations: (x: Written) => count(x, { one: 'variation', other: 'variations' }),
  hairs: (x: Written) => count(x, { one: 'hair', other: 'hairs' }),
  letters: (x: Written) => count(x, { one: 'letter', other: 'letters' }),
  washes: (x: Written) => count(x, { one: 'wash', other: 'washes' }),
  products: (x: Written) => count(x, { one: 'product', other: 'products' }),
};
