import type { shelf as words } from '../en/shelf';
import type { Part } from '../types';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** The salon’s shelves: what is wrong with one, and what to do. */
export const shelf: Part<typeof words> = {
  'problem.shelf_not_found': () => 'Cette étagère n’existe pas ici. En choisir une autre.',
  'problem.shelf_is_demo': () => 'L’étagère de démonstration est inventée et ne se modifie pas. La copier.',
  'problem.shelf_id_taken': () => 'Une étagère porte déjà ce nom. Enregistrer de nouveau.',
  'problem.shelf_changed_elsewhere': () =>
    'Un autre appareil a modifié cette étagère entre-temps. Rien n’est perdu : garder la vôtre ou prendre l’autre.',
  'problem.range_is_empty': (p: P) => `Il n’y a encore rien dans « ${of(p, 'range')} ». Ajouter ses nuances.`,
  'problem.no_developer_for': (p: P) =>
    `« ${of(p, 'range')} » se mélange avec un oxydant à ${of(p, 'strengths')} %, absent de l’étagère. Ajouter les flacons.`,
  'problem.no_level': (p: P) =>
    `Pas de hauteur de ton dans « ${of(p, 'text')} ». Écrire un nombre entier, comme « 7 cuivré » ; un code n’est jamais interprété.`,
  'problem.no_tone': (p: P) =>
    `Pas de reflet dans « ${of(p, 'text')} ». Écrire naturel, cendré, violet, beige, doré, cuivré, rouge ou vert, ou incolore.`,
  'problem.two_tones': (p: P) =>
    `Plus d’un reflet dans « ${of(p, 'text')} ». Mettre le plus fort dans une colonne « reflet ».`,
  'problem.no_name': () => 'Cette ligne ne nomme rien. Écrire le nom.',
  'problem.no_strength': (p: P) =>
    `Pas de force dans « ${of(p, 'text')} ». Écrire le pourcentage, comme « oxydant 6 % ».`,
  'problem.not_a_number_here': (p: P) =>
    `« ${of(p, 'text')} » n’est pas un nombre. En écrire un ou laisser la cellule vide.`,
  'problem.thousands_or_not': (p: P) => `« ${of(p, 'text')} » peut être mille ou un. Écrire 1000, ou 1,0.`,
  'problem.price_without_package': () =>
    'Un prix sans les grammes de l’emballage. Les indiquer ci-dessous pour tous, ou dans une colonne.',
  'problem.line_twice': (p: P) => `Le même produit qu’à la ligne ${of(p, 'line')}. Supprimer l’une des deux.`,
  'problem.too_many_cells': () =>
    'Plus de cellules que la première ligne. Mettre entre guillemets le texte qui contient le séparateur.',
  'problem.quote_not_closed': () => 'Un guillemet n’est pas fermé. L’ajouter à la fin de la cellule.',
};
