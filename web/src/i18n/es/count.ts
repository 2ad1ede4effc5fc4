import { counter } from '../count';

type Written = string | number;
const count = counter('es', ',');

/** Números con su nombre. */
export const n = {
  alturas: (x: Written) => count(x, { one: 'altura', other: 'alturas' }),
  semanas: (x: Written) => count(x, { one: 'semana', other: 'semanas' }),
  minutos: (x: Written) => count(x, { one: 'minuto', other: 'minutos' }),
  segundos: (x: Written) => count(x, { one: 'segundo', other: 'segundos' }),
  zonas: (x: Written) => count(x, { one: 'zona', other: 'zonas' }),
  boles: (x: Written) => count(x, { one: 'bol', other: 'boles' }),
  mechas: (x: Written) => count(x, { one: 'mecha en papel', other: 'mechas en papel' }),
  visitas: (x: Written) => count(x, { one: 'visita', other: 'visitas' }),
  mezclas: (x: Written) => count(x, { one: 'mezcla', other: 'mezclas' }),
  cabellos: (x: Written) => count(x, { one: 'cabello', other: 'cabellos' }),
  letras: (x: Written) => count(x, { one: 'letra', other: 'letras' }),
  lavados: (x: Written) => count(x, { one: 'lavado', other: 'lavados' }),
  productos: (x: Written) => count(x, { one: 'producto', other: 'productos' }),
  variations: (x: Written) => count(x, { one: 'variante', other: 'variantes' }),
};

/** Un valor como se escribe en español; los nombres quedan como están, y lo que falta se lee «?». */
export const of = (p: Readonly<Record<string, string>>, key: string) =>
  (p[key] ?? '?').replace(/^(-?\d+)\.0$/, '$1').replace(/^(-?\d+)\.(\d+)$/, '$1,$2');
