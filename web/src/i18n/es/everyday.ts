import type { Part } from '../types';
import type { everyday as english } from '../en/everyday';

/** Tests, looks, enquiries and cards. */
export const everyday: Part<typeof english> = {
  'diary.as_last': 'Como la última vez',
  'clients.card': 'Una ficha de papel o una lista',
  'clients.card_name': 'Nombre en la ficha',
  'clients.card_date': 'Fecha de la última línea',
  'clients.card_text': 'Lo que pone',
  'clients.card_keep': 'Guardar la ficha',
  'clients.list':
    'Una lista en CSV, con una línea de títulos: nombre, contacto, texto, fecha; las demás columnas van al texto',
  'clients.list_choose': 'Elegir una lista',
  'clients.list_none': 'Ningún título de esta lista es «nombre».',
  'clients.cards': 'De fichas y listas',
  'home.cut': 'Cortado desde entonces',
  'clients.list_keep': 'Guardar la lista',
  'bundle.batches': 'Lotes que tomaron los bols',
  'bundle.head': 'La visita tal como se escribió',
  'bundle.failed': 'No se pudo hacer el archivo.',
  'bundle.make': 'Para la aseguradora o el fabricante: todo en un archivo',
  'bundle.title': 'Todo lo que se guarda de una visita',
  'clients.list_nameless': (count: number) => `Sin nombre, no incluidas: ${count}`,
  'clients.list_read': (count: number) =>
    count === 1 ? 'Contiene 1 persona. ¿Guardarla?' : `Contiene ${count} personas. ¿Guardarlas?`,
  'clients.added': (count: number) => `Guardadas: ${count}`,
};
