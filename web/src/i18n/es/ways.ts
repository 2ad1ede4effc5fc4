import type { ways as english } from '../en/ways';
import type { Part } from '../types';
import { n } from './count';

export const ways: Part<typeof english> = {
  'ways.title': 'Otros caminos',
  'ways.lead': 'Peores en conjunto, mejores en una cosa.',
  'ways.none': 'Ningún otro camino es más suave, fácil o barato y aún cercano al deseo.',
  'ways.gentler': 'Más suave para el cabello',
  'ways.simpler': 'Más fácil de mezclar',
  'ways.cheaper': 'Más barato',
  'ways.fewer_bowls': 'Menos cuencos',
  'ways.later_on_lengths': 'La misma mezcla, más tarde en los largos',
  'ways.nearer': (levels) => `${n.alturas(levels)} más cerca del deseo`,
  'ways.quicker': 'Se enjuaga antes',
  'ways.softer_line': 'Una raíz menos marcada',
  'ways.closer': 'Gramos más finos, más cerca del deseo',
  'ways.other': 'Otro camino',
  'ways.same': 'casi igual',
  'ways.quarter': 'a un cuarto de altura, más o menos',
  'ways.half': 'a media altura, más o menos',
  'ways.one': 'a una altura, más o menos',
  'ways.more': 'a más de una altura',
  'ways.figure': (words, levels) => `${words} (${n.alturas(levels)})`,
  'ways.cost': (cost, grams) => `${cost} por ${grams}`,
  'ways.bowl': (label, grams, where) => `Cuenco ${label}, ${grams}: ${where}`,
  'ways.look': 'Verlo',
  'ways.looking': (way) => `Ve otro camino, no el plan: ${way}`,
  'ways.working': (way) => `Calculando otro camino: ${way}`,
  'ways.failed': (way) => `Este camino no se pudo calcular ahora: ${way}. Ve el plan.`,
  'ways.back': 'Volver al plan',
  'ways.take': 'Tomar este',
  'ways.taken': (way) => `Estos cuencos son ahora el plan: ${way}.`,
};
