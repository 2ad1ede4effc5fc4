import { counter } from '../count';

type Written = string | number;
const count = counter('fr', ',');

/** Nombres avec leur nom. */
export const n = {
  tons: (x: Written) => count(x, { one: 'ton', other: 'tons' }),
  semaines: (x: Written) => count(x, { one: 'semaine', other: 'semaines' }),
  minutes: (x: Written) => count(x, { one: 'minute', other: 'minutes' }),
  secondes: (x: Written) => count(x, { one: 'seconde', other: 'secondes' }),
  zones: (x: Written) => count(x, { one: 'zone', other: 'zones' }),
  bols: (x: Written) => count(x, { one: 'bol', other: 'bols' }),
  papillotes: (x: Written) => count(x, { one: 'papillote', other: 'papillotes' }),
  visites: (x: Written) => count(x, { one: 'visite', other: 'visites' }),
  mélanges: (x: Written) => count(x, { one: 'mélange', other: 'mélanges' }),
  cheveux: (x: Written) => count(x, { one: 'cheveu', other: 'cheveux' }),
  lettres: (x: Written) => count(x, { one: 'lettre', other: 'lettres' }),
  lavages: (x: Written) => count(x, { one: 'lavage', other: 'lavages' }),
  produits: (x: Written) => count(x, { one: 'produit', other: 'produits' }),
  variations: (x: Written) => count(x, { one: 'variante', other: 'variantes' }),
};
