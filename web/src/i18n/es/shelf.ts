import type { shelf as words } from '../en/shelf';
import type { Part } from '../types';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** The salon’s shelves: what is wrong with one, and what to do. */
export const shelf: Part<typeof words> = {
  'problem.shelf_not_found': () => 'Ese estante no existe aquí. Elija otro.',
  'problem.shelf_is_demo': () => 'El estante de demostración es inventado y no se cambia. Cópielo.',
  'problem.shelf_id_taken': () => 'Ya hay un estante con ese nombre. Guarde otra vez.',
  'problem.shelf_changed_elsewhere': () =>
    'Otro dispositivo cambió este estante mientras tanto. No se pierde nada: quédese con el suyo o tome el otro.',
  'problem.range_is_empty': (p: P) => `Todavía no hay nada en «${of(p, 'range')}». Añada sus tonos.`,
  'problem.no_developer_for': (p: P) =>
    `«${of(p, 'range')}» se mezcla con oxidante del ${of(p, 'strengths')} %, y no hay ninguno en el estante. Añada los frascos.`,
  'problem.no_level': (p: P) =>
    `Sin altura de tono en «${of(p, 'text')}». Escriba un número entero, como «7 cobrizo»; un código nunca se interpreta.`,
  'problem.no_tone': (p: P) =>
    `Sin reflejo en «${of(p, 'text')}». Escriba natural, ceniza, violeta, beige, dorado, cobrizo, rojo o verde, o incoloro.`,
  'problem.two_tones': (p: P) =>
    `Más de un reflejo en «${of(p, 'text')}». Ponga el más fuerte en una columna «reflejo».`,
  'problem.no_name': () => 'Esta línea no nombra nada. Escriba el nombre.',
  'problem.no_strength': (p: P) =>
    `Sin fuerza en «${of(p, 'text')}». Escriba el porcentaje, como «oxidante 6 %».`,
  'problem.not_a_number_here': (p: P) =>
    `«${of(p, 'text')}» no es un número. Escriba uno o deje la celda vacía.`,
  'problem.thousands_or_not': (p: P) => `«${of(p, 'text')}» puede ser mil o uno. Escriba 1000, o 1,0.`,
  'problem.price_without_package': () =>
    'Un precio sin los gramos del envase. Indíquelos abajo para todos, o en una columna.',
  'problem.line_twice': (p: P) => `El mismo producto que en la línea ${of(p, 'line')}. Quite una de las dos.`,
  'problem.too_many_cells': () =>
    'Más celdas que la primera línea. Ponga entre comillas el texto que contiene el separador.',
  'problem.quote_not_closed': () => 'Una comilla no está cerrada. Ciérrela al final de la celda.',
};
