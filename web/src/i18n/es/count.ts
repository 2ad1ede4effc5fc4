import { counter } from '../count';

type Written = string | number;
const count = counter('es', ',');

/** Números con su nombre. */
export const n = {
  alturas: (x: Written) => count(x, { one: 'altura', other: 'alturas' }),
  semanas: (x: Written) => count(x, { one: 'semana', other: 'semanas' }),
  zonas: (x: Written) => count(x, { one: 'zona', other: 'zonas' }),
  mezclas: (x: Written) => count(x, { one: 'mezcla', other: 'mezclas' }),
};
