import type { Dictionary } from '../types';
import type { Warning } from '../warnings';
import { n } from './count';

type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => (p[key] ?? '?').replace(/\.0$/, '').replace('.', ',');

/** Lo que avisa o detiene. */
export const warnings: Pick<Dictionary, Warning> = {
  'problem.read_on_dry_hair': () => 'Leer en cabello seco, junto a las muestras del salón.',
  'problem.history_unknown_test_first': () =>
    'La historia es desconocida: haga las pruebas de metal y de mechón antes de cualquier peróxido.',
  'problem.failed_stretch': () =>
    'El cabello mojado no recuperó: aquí ni decolorante, ni superaclarante, ni nada de 6 % o más.',
  'problem.extension_strand_first': () =>
    'Extensiones: aquí no se afirma nada sin una prueba en uno de sus mechones.',
  'problem.two_makers_in_one_bowl': (p) =>
    `${of(p, 'product')} es de otro fabricante. Nunca dos fabricantes en un cuenco.`,
  'problem.ratio_not_of_range': (p) =>
    `Cuenco ${of(p, 'bowl')}: la gama no permite la proporción 1 : ${of(p, 'ratio')}. Mezcle como dicen sus instrucciones.`,
  'problem.developer_not_of_range': (p) =>
    `Cuenco ${of(p, 'bowl')}: la gama no permite oxidante de ${of(p, 'percent')} %. Use una fuerza que ella nombre.`,
  'problem.longer_than_range_allows': (p) =>
    `Cuenco ${of(p, 'bowl')}: ${of(p, 'minutes')} min es más de lo que la gama permite (${of(p, 'max')}).`,
  'problem.two_ranges_in_one_bowl': (p) =>
    `Bol ${of(p, 'bowl')}: ${of(p, 'product')} es de otra gama. Mezclar gamas solo si el fabricante lo permite.`,
  'problem.developer_alone': (p) => `El bol ${of(p, 'bowl')} solo tiene oxidante. Añadir un tono.`,
  'problem.over_legal_limit': (p) =>
    `El cuenco ${of(p, 'bowl')} pasa de un límite legal. No lo use; cambie sus partes hasta que esté dentro.`,
  'problem.not_permitted_use': (p) =>
    `El cuenco ${of(p, 'bowl')} contiene una sustancia no permitida para este uso. No lo use.`,
  'problem.percentages_unknown': (p) =>
    `Cuenco ${of(p, 'bowl')}: no se declara cada porcentaje, la comprobación legal está incompleta.`,
  'problem.no_range_usable': () =>
    'Ninguna gama de este estante puede usarse hoy en este cabello. Antes, probar o tratar.',
  'why.needs_filler': () =>
    'El cabello aclarado que se oscurece tanto necesita antes un prepigmento, o queda apagado.',
  'why.condition_spent': () => 'El cabello no tiene estado para más aclarado. Trátelo y planee otra visita.',
  'why.nothing_wished': () => 'Cada zona debe quedar como está.',
  'why.no_bowl_may_serve': () => 'Ningún cuenco de este estante puede ir en estas zonas: no se compara.',
  'why.comes_off_early': (p: P) =>
    `Cuenco ${of(p, 'bowl')} en ${of(p, 'zone')}: el reloj le deja ${of(p, 'minutes')} minutos, no los ${of(p, 'planned')} previstos. Otra persona, menos zonas a la vez o una mezcla fresca; si no, contar con menos.`,
  'why.later_bowl_decides': () => 'Aquí sigue otro paso: cuenta el cuenco de después.',
  'why.route_chelate': (p: P) => `Quitar los minerales: ${of(p, 'minutes')} minutos, luego aclarar bien.`,
  'why.minerals_first': () =>
    'Hay minerales del agua en este cabello: quitarlos con un tratamiento quelante antes de cualquier oxidante.',
  'why.metal_test_first': () =>
    'La historia puede contener metal: antes de cualquier peróxido va una prueba de metal.',
  'why.range_not_on_scalp': () => 'Una gama queda fuera: no puede tocar el cuero cabelludo.',
  'why.straightened_lately': () => 'Este cabello se alisó hace poco: los oxidantes más fuertes quedan fuera.',
  'why.failed_stretch': () =>
    'El estiramiento en mojado falló: ahí ni decolorante, ni superaclarante, ni nada de 6 % o más.',
  'why.law': () => 'Un límite legal lo impide.',
  'why.other_maker_skin_test': () =>
    'Color de otro fabricante: antes hace falta una nueva prueba cutánea, como diga el fabricante.',
  'why.nothing_may_replace': () => 'Nada del estante puede ocupar su lugar en este cabello.',
  'why.scalp_lightener_strength': () => 'Un decolorante de esta fuerza no puede tocar el cuero cabelludo.',
  'why.route_strand_first': () => 'Más de un paso añade duda: pruebe antes todo el camino en un mechón.',
  'why.route_stays_short': () => 'Aun así no se alcanza del todo el deseo.',
  'why.route_needs_visits': (p) =>
    `Hacen falta ${of(p, 'visits')} visitas, con ${n.semanas(of(p, 'weeks'))} o más entre ellas. Revise el cabello antes de cada una.`,
  'why.route_lighten': (p) =>
    `Aclarar con ${of(p, 'percent')} %, hasta ${of(p, 'minutes')} minutos. Mirar cada pocos minutos; parar con dolor, calor o si el cabello se estira.`,
  'why.finding_green': (p) =>
    `${of(p, 'zone')}: se ve verde. Descarte primero minerales y metal; después un poco de rojo o cobre lo corrige.`,
};
