import type { PartialDictionary } from '../types';

type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => (p[key] ?? '?').replace(/\.0$/, '').replace('.', ',');

/** Por qué un bol o un orden es como es; lo demás sigue en inglés. */
export const why: PartialDictionary = {
  'why.natural_share_for_white': (p: P) =>
    `${of(p, 'share')} % de natural, para cubrir ${of(p, 'white')} % de canas sin que quede plano.`,
  'why.counter_tone': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, compensa el calor de debajo.`,
  'why.developer_for_white': (p: P) => `Oxidante de ${of(p, 'percent')} %, para que las canas tomen.`,
  'why.developer_for_deposit': (p: P) =>
    `Oxidante de ${of(p, 'percent')} %: el color se deposita, casi nada aclara.`,
  'why.own_bowl': () => 'Esta zona pide su propio bol.',
  'why.warming_tone': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, devuelve el calor que faltaría.`,
  'why.in_packets': (p: P) => `Unos ${of(p, 'packets')} paquetes, ${of(p, 'grams')} g en cada uno.`,
  'why.beside_packets': () => 'Va entre los paquetes mientras actúan; aclarar todo junto.',
  'why.deepen_at_basin': () =>
    'Pocas veces demasiado oscuro. Si en el lavabo queda claro, oscurecer allí con un tono sobre tono un tono más oscuro.',
  'why.nothing_wished': () => 'Todas las zonas se quedan como están.',
  'why.finish_with': (p: P) => `Terminar lo pesado con ${of(p, 'grams')} g de ${of(p, 'product')}.`,
  'why.weighed_is_lost': (p: P) =>
    `Bol ${of(p, 'bowl')}: lo pesado (${of(p, 'grams')} g) no se puede terminar bien. Empezarlo de nuevo.`,
  'why.another_bowl': () => 'Otro bol se acerca más que cualquier cambio de este.',
  'why.packets_first': () => 'Primero los paquetes: lo de en medio va después.',
  'why.whitest_first': () => 'Primero el pelo más blanco: es el que más tarda.',
  'why.resistant_first': () => 'Primero las canas resistentes: son las que más tardan.',
  'why.crown_to_nape_then_sides': () => 'De la coronilla a la nuca, luego los lados.',
  'problem.woven_takes_all': (p: P) =>
    `Los paquetes toman todo el pelo de ${of(p, 'area')}. Dejar algo entre ellos.`,
  'problem.shared_for_stock': (p: P) =>
    `${of(p, 'product')}: solo ${of(p, 'grams')} g en el estante, así que no para todos los boles.`,
  'problem.stock_short': (p: P) => `${of(p, 'product')}: no hay bastante en el estante.`,
};
