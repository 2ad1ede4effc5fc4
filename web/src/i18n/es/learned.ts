import type { learned as en } from '../en/learned';
import type { Part } from '../types';
import { n } from './count';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** Lo que enseñaron los resultados, y las muestras medidas. */
export const learned: Part<typeof en> = {
  'learned.here': 'Los resultados cambian este plan',
  'learned.look': 'Ver o quitar un resultado',
  'learned.moved': (zone: string, before: string, now: string) =>
    `${zone}: altura ${before} sin los resultados, ${now} con ellos`,
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
  'card.title': 'Con una foto de la tarjeta impresa',
  'card.lead':
    'Imprima la tarjeta a su tamaño y coloque el mechón detrás de su ventana, de modo que la llene. Fotografíela desde arriba con luz de día, con las cuatro esquinas en la imagen y sin sombras.',
  'card.print': 'Abrir la tarjeta para imprimirla',
  'card.patches': 'Los campos de la tarjeta medidos por un instrumento (una vez por tarjeta impresa)',
  'card.patches_note': 'Sin ellos, el mechón solo se compara con los campos vecinos.',
  'card.photo': 'Foto de la tarjeta',
  'card.reading': 'Leyendo la foto …',
  'card.level': (level: string) => `altura ${level}`,
  'card.off': (amount: string) => `desvío de ΔE00 ${amount} como mucho, nueve de cada diez veces`,
  'card.lab_alone':
    'El archivo de la tarjeta solo tiene L*a*b*: no se descuenta lo que distingue la tinta del cabello bajo esta lámpara. Los espectros dicen más.',
  'card.only_alike': (nearest: string, next: string) =>
    `Nadie ha medido esta tarjeta. Se parece sobre todo al campo ${nearest} y luego al ${next}; nada en cifras.`,
  'card.is_lighter': (patch: string) => `Es más claro que ${patch}.`,
  'card.is_darker': (patch: string) => `Es más oscuro que ${patch}.`,
  'card.of': 'Mechón de',
  'card.which': '¿Qué tono?',
  'card.take': 'Poner en la lista',
  'problem.card_not_found': () =>
    'La tarjeta no está en la imagen, o no entera. Las cuatro marcas de las esquinas deben verse nítidas y sin sombras.',
  'problem.card_small': () => 'La tarjeta es demasiado pequeña en la imagen. Acérquese.',
  'problem.card_picture': () => 'La imagen no tiene píxeles. Repítala.',
  'problem.card_clipped': () => 'El blanco de la tarjeta está quemado. Repita la foto con menos luz.',
  'problem.card_dark': () => 'La tarjeta está demasiado oscura. Repita la foto con más luz.',
  'problem.card_uneven': () =>
    'La luz cae de un lado a otro de la tarjeta. Gírela hacia la ventana, lejos de lámparas cercanas.',
  'problem.card_strand_clipped': () =>
    'El mechón está en el límite de lo que la foto puede decir. Repítala con luz de día, con más o menos luz.',
  'problem.card_patches_missing': (p: P) =>
    `Faltan ${of(p, 'count')} campos en el archivo de la tarjeta: ${of(p, 'ids')} … Nombre las muestras por fila y columna de la tarjeta, de A2 a F8.`,
  'problem.picture_kind': () => 'No es una foto legible. Use un JPEG.',
  'problem.picture_large': () => 'La foto es demasiado grande.',
  'problem.picture_small': () => 'La foto es demasiado pequeña: al menos 400 píxeles por lado.',
  'problem.picture_broken': () => 'La foto no se puede descomprimir. Cópiela de nuevo de la cámara.',
  'problem.measured_nothing': () =>
    'No hay ni espectros ni L*a*b*. Hacen falta columnas con longitudes de onda de 400 a 700 nm, o L*, a* y b*.',
  'problem.measured_impossible': (p: P) =>
    `Línea ${of(p, 'line')}: ${of(p, 'field')} no puede ser ${of(p, 'got')}.`,
  'problem.lab_typed': (p: P) => `«${of(p, 'got')}» no es L*a*b*. Escriba tres números: 54,2 8,1 19,6.`,
  'problem.result_not_found': () => 'Este resultado ya no está. Vuelva a cargar la página.',
};
