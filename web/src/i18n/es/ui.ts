import type { ui as english } from '../en/ui';
import type { Part } from '../types';

export const ui: Part<typeof english> = {
  'ui.less': (what) => `Menos: ${what}`,
  'ui.more': (what) => `Más: ${what}`,
  'ui.close': 'Cerrar',
  'ui.undo': 'Deshacer',
  'ui.cancel': 'Cancelar',
  'ui.retry': 'Intentar de nuevo',
  'ui.busy': 'Calculando',
  'ui.clipped': 'fuera de lo que esta pantalla puede mostrar',
  'ui.stop': 'Alto',
  'ui.caution': 'Cuidado',
  'ui.kept': 'Se conserva',
  'ui.todo': 'Qué hacer',
  'ui.part': 'Producto',
  'ui.amount': 'Cantidad',
  'ui.total': 'En total',
  'ui.as_list': 'Como lista',
  'ui.latest': (time) => `fuera a las ${time} como muy tarde`,
  'unit.g': 'g',
  'unit.oz': 'oz',
  'unit.cm': 'cm',
  'unit.mm': 'mm',
  'unit.min': 'min',
  'unit.volumes': 'vol',
  'unit.percent': '%',
};
