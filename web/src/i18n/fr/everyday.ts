import type { Part } from '../types';
import type { everyday as english } from '../en/everyday';

/** Tests, looks, enquiries and cards. */
export const everyday: Part<typeof english> = {
  'diary.as_last': 'Comme la dernière fois',
  'clients.card': 'Une fiche papier, ou une liste',
  'clients.card_name': 'Nom sur la fiche',
  'clients.card_date': 'Date de la dernière ligne',
  'clients.card_text': 'Ce qui y est écrit',
  'clients.card_keep': 'Garder la fiche',
  'clients.list':
    'Une liste en CSV, avec une ligne de titres : nom, contact, texte, date ; les autres colonnes vont au texte',
  'clients.list_choose': 'Choisir une liste',
  'clients.list_none': 'Aucun titre de cette liste n’est « nom ».',
  'clients.cards': 'De fiches et de listes',
  'home.cut': 'Coupé depuis',
  'clients.list_keep': 'Garder la liste',
  'bundle.batches': 'Lots pris par les bols',
  'bundle.head': 'La visite telle qu’elle a été écrite',
  'bundle.failed': 'Le fichier n’a pas pu être fait.',
  'bundle.make': 'Pour l’assurance ou le fabricant : tout en un fichier',
  'bundle.title': 'Tout ce qui est gardé d’une visite',
  'clients.list_nameless': (count: number) => `Sans nom, laissées de côté : ${count}`,
  'clients.list_read': (count: number) =>
    count === 1 ? '1 personne y figure. La garder ?' : `${count} personnes y figurent. Les garder ?`,
  'clients.added': (count: number) => `Gardées : ${count}`,
};
