import type { learned as en } from '../en/learned';
import type { Part } from '../types';
import { n } from './count';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** Lo que enseñaron los resultados, y las muestras medidas. */
export const learned: Part<typeof en> = {
  'learned.title': 'Lo que enseñaron los resultados',
  'learned.lead':
    'Cada resultado cambia lo que se prevé después: para una gama, para una persona, para el ojo que hace el diagnóstico.',
  'learned.words': 'Aprendido hasta ahora',
  'learned.nothing': 'Todavía nada bastante cierto y mayor que un quinto de altura.',
  'learned.drift': 'Visto y previsto',
  'learned.drift_note':
    'Cada punto es una zona de un resultado: por encima de la línea salió más claro de lo previsto; por debajo, más oscuro, en alturas. Nueve de cada diez deberían estar en la banda. Los puntos abiertos no enseñaron nada.',
  'learned.drift_said': (within: string, all: string) =>
    `${within} de ${all} resultados estaban en el intervalo indicado.`,
  'learned.results': 'Resultados, del más reciente al más antiguo',
  'learned.seen': (foreseen: string, seen: string) => `prevista altura ${foreseen}, vista ${seen}`,
  'learned.set_aside': 'Demasiado lejos: se mira, pero no se aprende de él.',
  'learned.without': 'Quitado: todo se aprendió de nuevo sin él.',
  'learned.take_out': 'Quitar',
  'learned.take_in': 'Volver a poner',
  'learned.more': 'Resultados anteriores',
  'learned.failed': 'No se pudo abrir lo aprendido.',
  'learned.failed_kept': 'Todos los resultados se conservan.',
  'learned.of_salon': 'En este salón',
  'learned.of_range': (name: string) => `Gama ${name}`,
  'learned.of_person': 'Este cabello',
  'learned.of_colourist': 'En el diagnóstico',
  'learned.deeper': (levels: string) => `sale ${n.alturas(levels)} más oscuro de lo calculado`,
  'learned.lighter': (levels: string) => `sale ${n.alturas(levels)} más claro de lo calculado`,
  'learned.lifts_more': (levels: string) => `aclara ${n.alturas(levels)} más de lo calculado`,
  'learned.lifts_less': (levels: string) => `aclara ${n.alturas(levels)} menos de lo calculado`,
  'learned.warmer': (levels: string) => `sale más cálido de lo calculado (${levels})`,
  'learned.cooler': (levels: string) => `sale más frío de lo calculado (${levels})`,
  'learned.reads_light': (levels: string) => `un ojo ve ${n.alturas(levels)} más claro que los demás`,
  'learned.reads_dark': (levels: string) => `un ojo ve ${n.alturas(levels)} más oscuro que los demás`,
  'reading.measured': (l: string, a: string, b: string) =>
    `medido la última vez: L* ${l} · a* ${a} · b* ${b}; vale hasta que se lea de nuevo la altura o el matiz`,
  'swatches.title': 'Muestras medidas',
  'swatches.lead':
    'Sobre cabello blanco, con la mezcla habitual de esta gama. A partir de tres muestras medidas, el resto de la gama las sigue.',
  'swatches.measured': (some: string, all: string) => `${some} de ${all} tonos medidos`,
  'swatches.text': 'El archivo de un instrumento, o código; L*; a*; b* línea por línea (D65, 10°)',
  'swatches.file': 'Abrir un archivo',
  'swatches.look': 'Leer',
  'swatches.next': '¿Cuáles medir ahora?',
  'swatches.keep': (n: string) => `Guardar ${n}`,
  'swatches.matched': (n: string, names: string) => `${n} entendidas: ${names}`,
  'swatches.unmatched': (names: string) => `Ningún tono de esta gama, o más de uno, se llama así: ${names}`,
  'swatches.other_light':
    'El archivo da L*a*b* para otra luz que D65 y 10°. Se toman como están; exporte espectros si el instrumento puede.',
  'swatches.measure_next': (names: string) => `Estas dirían más de las demás: ${names}`,
  'swatches.broken': (line: string) =>
    `La línea ${line} no se lee como una medición. Corríjala o exporte de nuevo el archivo.`,
  'problem.measured_nothing': () =>
    'No hay ni espectros ni L*a*b*. Hacen falta columnas con longitudes de onda de 400 a 700 nm, o L*, a* y b*.',
  'problem.measured_impossible': (p: P) =>
    `Línea ${of(p, 'line')}: ${of(p, 'field')} no puede ser ${of(p, 'got')}.`,
  'problem.lab_typed': (p: P) => `«${of(p, 'got')}» no es L*a*b*. Escriba tres números: 54,2 8,1 19,6.`,
  'problem.result_not_found': () => 'Este resultado ya no está. Vuelva a cargar la página.',
};
